"""The form of the tables of words, and of a file that holds nothing else."""

from __future__ import annotations

from chamberwise.engine.reading.form_rules import RULE
from chamberwise.engine.reading.form_words import ACT, CHOICE, DUTY, FINDING, KIT, SOURCE
from chamberwise.engine.reading.shapes import TEXT, Entries, Key, Record

WORD_TABLES = {
    "findings": Key(Entries(FINDING), "What can be true of eye, patient, team or kit"),
    "choices": Key(Entries(CHOICE), "Choices left to the unit"),
    "acts": Key(Entries(ACT), "The smallest things that safety speaks of"),
    "duties": Key(Entries(DUTY), "Who does or says things"),
    "kit": Key(Entries(KIT), "What must be to hand"),
    "sources": Key(Entries(SOURCE), "Where claims come from"),
    "rules": Key(Entries(RULE), "Safety rules that hold on every walk"),
}

VOCABULARY = Record(
    "a vocabulary file",
    {"vocabulary": Key(TEXT, "What the file lists", required=True), **WORD_TABLES},
)
