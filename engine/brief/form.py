"""The form of a list in YAML and of a file of stock."""

from __future__ import annotations

from chamberwise.engine.brief.fields import FIELDS
from chamberwise.engine.reading.shapes import (
    DATE,
    TEXT,
    Entries,
    Items,
    Key,
    Kind,
    Record,
    Scalar,
)
from chamberwise.engine.working.calculations.anterior_chamber_lens import USUAL
from chamberwise.engine.working.calculations.lens_to_sulcus import CHOICES, FITTING, LENS_TYPE

IN_FRONT = tuple(USUAL)
KINDS = (*LENS_TYPE.words, *IN_FRONT)
SULCUS = FITTING

HEAD = {
    "reader": Key(TEXT, "Who reads aloud, by role"),
    "takes over": Key(TEXT, "Who takes over, by role"),
    "stop word": Key(TEXT, "The word that stops everything"),
}

LIST = Record(
    "a list",
    {
        "list": Key(TEXT, "What the list is called; never a patient's name", required=True),
        "day": Key(DATE, "The day of the list"),
        **HEAD,
        "cases": Key(
            Items(
                Record(
                    "a case",
                    {name: Key(TEXT, name, required=name == "case") for name in FIELDS},
                )
            ),
            "The cases in their order",
            required=True,
        ),
    },
)

POWER = Record(
    "a power on the shelf",
    {
        "power": Key(TEXT, "In dioptres", required=True),
        "count": Key(
            TEXT, "How many there are; 0 where it is usual and has run out", required=True
        ),
    },
)

LENS = Record(
    "a lens on the shelf",
    {
        "title": Key(TEXT, "What it is, by its generic name", required=True),
        "kind": Key(Scalar(Kind.WORD, KINDS), "How it is built", required=True),
        "a-constant": Key(TEXT, "Its A-constant, as the unit uses it", required=True),
        "powers": Key(Items(POWER), "How many there are of each power", required=True),
    },
)

STOCK = Record(
    "a file of stock",
    {
        "stock": Key(TEXT, "The unit whose shelf it is", required=True),
        "counted": Key(DATE, "When it was counted", required=True),
        **HEAD,
        "sulcus": Key(Scalar(Kind.WORD, CHOICES), "The unit's way to a power in the sulcus"),
        "lidocaine limit": Key(
            Scalar(Kind.WORD, ("lower", "stricter")), "Which ceiling the unit keeps"
        ),
        "lenses": Key(Entries(LENS), "The lenses by name", required=True),
    },
)
