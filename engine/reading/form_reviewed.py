"""The form of a list of reviewed mutants: edits that no check or rule tells, and why not."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.reading.shapes import NAME, TEXT, Items, Key, Record

REVIEWED_EDIT = Record(
    N_("a reviewed edit"),
    {
        "edit": Key(
            TEXT, N_("The mutant's name; a `*` at its end stands for any rest"), required=True
        ),
        "reason": Key(TEXT, N_("Why the edit does no harm"), required=True),
    },
)

REVIEWED = Record(
    N_("a list of reviewed mutants"),
    {
        "mutants of": Key(NAME, N_("The pathway"), required=True),
        "reviewed": Key(Items(REVIEWED_EDIT), N_("The edits that do no harm"), required=True),
    },
)
