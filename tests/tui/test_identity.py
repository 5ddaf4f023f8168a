from __future__ import annotations

import pytest
from chamberwise.tui.identity import may_name_a_patient


@pytest.mark.parametrize(
    "note",
    [
        "born 12.03.1941",
        "12/3/41",
        "1941-03-12",
        "12 March 1941",
        "March 12, 1941",
        "geboren am 12. März 1941",
        "12. Dez. 41",
        "number 943 476 5919",
        "case 4711471",
    ],
)
def test_what_may_name_a_patient_is_asked_about(note: str) -> None:
    assert may_name_a_patient(note)


@pytest.mark.parametrize(
    "note", ["lens +21.5 D in at 10:32", "box opened after 45 s", "10-0 nylon", "theatre 3"]
)
def test_what_a_team_notes_is_kept_without_asking(note: str) -> None:
    assert not may_name_a_patient(note)
