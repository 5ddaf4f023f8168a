"""The form of the tables of words, and of a file that holds nothing else."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.reading.form_rules import RULE
from chamberwise.engine.reading.form_words import ACT, CHOICE, DUTY, FINDING, KIT, SOURCE
from chamberwise.engine.reading.shapes import TEXT, Entries, Key, Record

WORD_TABLES = {
    "findings": Key(Entries(FINDING), N_("What can be true of eye, patient, team or kit")),
    "choices": Key(Entries(CHOICE), N_("Choices left to the unit")),
    "acts": Key(Entries(ACT), N_("The smallest things that safety speaks of")),
    "duties": Key(Entries(DUTY), N_("Who does or says things")),
    "kit": Key(Entries(KIT), N_("What must be to hand")),
    "sources": Key(Entries(SOURCE), N_("Where claims come from")),
    "rules": Key(Entries(RULE), N_("Safety rules that hold on every walk")),
}

VOCABULARY = Record(
    N_("a vocabulary file"),
    {"vocabulary": Key(TEXT, N_("What the file lists"), required=True), **WORD_TABLES},
)
