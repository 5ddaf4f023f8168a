"""The form of a list of reviewed mutants: edits that no check or rule tells, and why not."""

from __future__ import annotations

from chamberwise.engine.reading.shapes import NAME, TEXT, Items, Key, Record

REVIEWED_EDIT = Record(
    "a reviewed edit",
    {
        "edit": Key(TEXT, "The mutant's name; a `*` at its end stands for any rest", required=True),
        "reason": Key(TEXT, "Why the edit does no harm", required=True),
    },
)

REVIEWED = Record(
    "a list of reviewed mutants",
    {
        "mutants of": Key(NAME, "The pathway", required=True),
        "reviewed": Key(Items(REVIEWED_EDIT), "The edits that do no harm", required=True),
    },
)
