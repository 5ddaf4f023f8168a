"""The form of a list in YAML and of a file of stock."""

from __future__ import annotations

from chamberwise.engine.brief.fields import FIELDS
from chamberwise.engine.language.texts import N_
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
    "reader": Key(TEXT, N_("Who reads aloud, by role")),
    "takes over": Key(TEXT, N_("Who takes over, by role")),
    "stop word": Key(TEXT, N_("The word that stops everything")),
}

LIST = Record(
    N_("a list"),
    {
        "list": Key(TEXT, N_("What the list is called; never a patient's name"), required=True),
        "day": Key(DATE, N_("The day of the list")),
        **HEAD,
        "cases": Key(
            Items(
                Record(
                    N_("a case"),
                    {name: Key(TEXT, name, required=name == "case") for name in FIELDS},
                )
            ),
            N_("The cases in their order"),
            required=True,
        ),
    },
)

POWER = Record(
    N_("a power on the shelf"),
    {
        "power": Key(TEXT, N_("In dioptres"), required=True),
        "count": Key(
            TEXT, N_("How many there are; 0 where it is usual and has run out"), required=True
        ),
    },
)

LENS = Record(
    N_("a lens on the shelf"),
    {
        "title": Key(TEXT, N_("What it is, by its generic name"), required=True),
        "kind": Key(Scalar(Kind.WORD, KINDS), N_("How it is built"), required=True),
        "a-constant": Key(TEXT, N_("Its A-constant, as the unit uses it"), required=True),
        "powers": Key(Items(POWER), N_("How many there are of each power"), required=True),
    },
)

STOCK = Record(
    N_("a file of stock"),
    {
        "stock": Key(TEXT, N_("The unit whose shelf it is"), required=True),
        "counted": Key(DATE, N_("When it was counted"), required=True),
        **HEAD,
        "sulcus": Key(Scalar(Kind.WORD, CHOICES), N_("The unit's way to a power in the sulcus")),
        "lidocaine limit": Key(
            Scalar(Kind.WORD, ("lower", "stricter")), N_("Which ceiling the unit keeps")
        ),
        "lenses": Key(Entries(LENS), N_("The lenses by name"), required=True),
    },
)
