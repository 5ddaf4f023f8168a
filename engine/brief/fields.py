"""What a list may hold about a case, and what it may never hold."""

from __future__ import annotations

import re

from chamberwise.engine.working.risk.factors import OF_ODDS, OF_POINTS

CASE = "case"
OF_THE_EYE = (
    "eye",
    "biometry-eye",
    "axial-length",
    "keratometry",
    "target",
    "planned-model",
    "planned-lens",
    "white-to-white",
)
OF_THE_WALK = ("lens-type", "planned-a-constant", "new-a-constant")
"""Of the lens that a walk comes to; its figures are shown there, and the brief has its own."""
OF_THE_PATIENT = ("weight", "anaesthesia", "lidocaine-planned")
OF_RISK = tuple(each.name for each in (*OF_ODDS, *OF_POINTS) if each.name not in OF_THE_EYE)
FIELDS = (CASE, *OF_THE_EYE, *OF_THE_WALK, *OF_THE_PATIENT, *OF_RISK)
ALSO = {"al": "axial-length", "k": "keratometry", "rx": "target", "wtw": "white-to-white"}
"""Short names of the trade."""

_IDENTITY = re.compile(
    r"name|surname|patient|birth|\bdob\b|hospital|\bnhs\b|\bmrn\b|\bchi\b|number|\bid\b|address|"
    r"post ?code|phone|mobile|e-?mail|\bgp\b|kin",
    re.IGNORECASE,
)
_LABEL = re.compile(r"[A-Za-z]|(?:[Cc]ase |[A-Za-z]{1,2}[ -]?)?[0-9]{1,3}[A-Za-z]?")
_UNIT = re.compile(r"\(([^()]*)\)\s*$")
LONGEST_LABEL = 8


def is_identity(head: str) -> bool:
    """Whether a head looks like one of a patient's identity.

    >>> is_identity("Patient name"), is_identity("hospital_number"), is_identity("case")
    (True, True, False)
    """
    return _IDENTITY.search(re.sub(r"[_\-.]+", " ", head)) is not None


def is_label(label: str) -> bool:
    """Whether a label says which case it is on this list and nothing of who it is.

    >>> is_label("A"), is_label("case 3"), is_label("Smith"), is_label("1234567")
    (True, True, False, False)
    """
    return 0 < len(label) <= LONGEST_LABEL and _LABEL.fullmatch(label) is not None


def field(head: str) -> str:
    """Return the field a head stands for, as it is spelt here, without its unit.

    >>> field("Axial length (mm)"), field("K")
    ('axial-length', 'keratometry')
    """
    spelt = re.sub(r"[\s_]+", "-", _UNIT.sub("", head).strip().casefold())
    return ALSO.get(spelt, spelt)


def unit_of(head: str) -> str:
    """Return the unit a head names in brackets.

    >>> unit_of("weight (kg)"), unit_of("weight")
    ('kg', '')
    """
    found = _UNIT.search(head)
    return found[1].strip() if found else ""


def with_unit(cell: str, unit: str) -> str:
    """Return a cell with the unit of its head, where it is a bare number.

    >>> with_unit(" 70 ", "kg"), with_unit("11 st", "kg")
    ('70 kg', '11 st')
    """
    text = cell.strip()
    return f"{text} {unit}" if unit and text and text[-1].isdigit() else text
