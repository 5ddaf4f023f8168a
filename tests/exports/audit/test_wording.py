"""What must pass the rules on doses as printed, and what must not."""

from __future__ import annotations

import pytest
from chamberwise.exports.audit.audit import audit

from tests.exports.audit.planted_words import says
from tests.exports.audit.sheets import wall

RIGHT = (
    "Give 5 mg",
    "Inject 0.5 mL",
    "Give 10 mg",
    "Give 4 units",
    "Give 50 micrograms",
    "Mark the right eye",
    "Dilute to 1 mg per mL",
    "Insert the 6.0 mm lens",
)
WRONG = (
    "Give 5.0 mg",
    "Inject .5 mL",
    "Give 10mg",
    "Give 4U",
    "Give 50 ug",
    "Mark OD",
    "Draw up epinephrine1 mg",
    "Use adrenaline 1:1000",
    "Drawer 1, 20\ns to fetch",
    "Wait 2\nminutes",
    "Do not stop unless not stable",
)
WORDING = ("MED", "LAN")


def broken(words: str) -> set[str]:
    """Return which rules on wording one more instruction breaks."""
    case = says(words.replace(" mg", "\u00a0mg"))(wall())
    found = audit(case.sheet, case.pdf, case.terms).found
    return {each.rule for each in found if each.rule.startswith(WORDING)}


@pytest.mark.parametrize("words", RIGHT)
def test_right_words_pass(words: str) -> None:
    assert broken(words) == set()


@pytest.mark.parametrize("words", WRONG)
def test_wrong_words_are_found(words: str) -> None:
    assert broken(words) != set()
