"""What a change bears on: sheets, copies that hang, cards and rehearsals."""

from __future__ import annotations

from chamberwise.engine.stamp.content import content_digest
from chamberwise.engine.stamp.copies import Copy, Register

from tests.engine.comparing.versions import PATHWAY, compared, old
from tests.support.build import TODAY


def copy(code: str, pathway: str, content: str) -> Copy:
    return Copy(code, pathway, pathway, "0.4", "wall-chart", "A3", TODAY, content, "Theatre 2")


def hanging() -> Register:
    now = {name: content_digest(old().library, name) for name in old().library.pathways}
    return Register(
        (
            copy("1", PATHWAY, now[PATHWAY]),
            copy("2", "pressing-lids", now["pressing-lids"]),
            copy("3", PATHWAY, "an older content"),
        )
    )


def test_copies_of_what_changed_come_down_and_others_stay() -> None:
    found = compared(("does: Withdraw the tip.", "does: Advance the tip."), register=hanging())
    assert found.touched.printed == (PATHWAY,)
    assert [each.code for each in found.touched.take_down] == ["1", "3"]


def test_cards_and_acts_are_those_of_the_steps_that_changed() -> None:
    found = compared(("does: Withdraw the tip.", "does: Advance the tip.")).touched
    assert found.rehearsed == (PATHWAY,)
    assert found.duties == ("surgeon", "scrub-practitioner")
    assert found.acts == ("fill-chamber", "withdraw-tip")


def test_a_spelling_is_printed_anew_but_not_rehearsed() -> None:
    found = compared(("Sweep the iris from", "Sweep the  iris from")).touched
    assert found.printed == (PATHWAY,)
    assert found.rehearsed == found.acts == ()


def test_a_rule_is_not_printed() -> None:
    found = compared(
        ("severity: critical\n    instead: Push", "severity: serious\n    instead: Push")
    )
    assert found.changes
    assert found.touched.printed == ()
