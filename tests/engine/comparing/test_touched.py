"""What a change bears on: sheets, copies that hang, cards and rehearsals."""

from __future__ import annotations

from chamberwise.engine.comparing.change import Kind, Rating
from chamberwise.engine.comparing.compare import compare
from chamberwise.engine.comparing.mending import ToMend
from chamberwise.engine.reading.library import assemble, read_text
from chamberwise.engine.stamp.content import content_digest
from chamberwise.engine.stamp.copies import Copy, Register

from tests.engine.comparing.versions import (
    NOTHING_PRINTED,
    PATHWAY,
    Version,
    compared,
    new,
    old,
    texts,
)
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


SHEET = """local sheet: here
unit: A unit
over: {pathway: shallow-chamber, edition: 0.4, digest: 0000-0000-0000}
phones:
  call-for-help: {number: extension X1, hours: at any hour}
wording:
  - at: steps / sweep / do / 1 / does
    expects: sweep
    says: sweep
changes:
  - change: steps / fill / go to
    to: sweep
    because: sweep
"""


def test_a_sheet_that_names_the_old_name_is_told_by_line() -> None:
    """A text that happens to read like a name is none."""
    edits = ("  sweep:\n", "  sweep-it:\n"), ("cannot tell: sweep\n", "cannot tell: sweep-it\n")
    sides = Version(old(), PATHWAY), Version(new(*edits), PATHWAY)
    others = SHEET.replace("shallow-chamber", "pressing-lids"), "just a text"
    sheets = [read_text(text, f"{at}.yaml") for at, text in enumerate((SHEET, *others))]
    found = compare(*sides, NOTHING_PRINTED, TODAY, sheets).touched
    assert found.mend == (
        ToMend("0.yaml", 7, "sweep", "sweep-it"),
        ToMend("0.yaml", 8, "sweep", "sweep-it"),
        ToMend("0.yaml", 12, "sweep", "sweep-it"),
    )
    assert found.printed == (PATHWAY,), "its sheets carry another stamp now"
    assert found.rehearsed == ()


def test_a_sheet_that_names_what_is_gone_is_told_too() -> None:
    was, now = "call-for-help: {title: Call for help", "ring: {title: Ring"
    files = [read_text(text.replace(was, now), name) for name, text in texts().items()]
    sides = Version(old(), PATHWAY), Version(assemble(files), PATHWAY)
    found = compare(*sides, NOTHING_PRINTED, TODAY, [read_text(SHEET, "here.yaml")]).touched
    assert ToMend("here.yaml", 5, "call-for-help", "") in found.mend


def test_of_a_pathway_that_bears_another_name_the_old_copies_come_down() -> None:
    edited = {name: text.replace(PATHWAY, "flat-chamber") for name, text in texts().items()}
    loaded = assemble([read_text(text, name) for name, text in edited.items()])
    sheet = read_text(f"local sheet: ours\nover:\n  pathway: {PATHWAY}\n", "ours.yaml")
    sides = Version(old(), PATHWAY), Version(loaded, "flat-chamber")
    found = compare(*sides, hanging(), TODAY, (sheet,))
    assert [(each.kind, each.rating) for each in found.changes] == [
        (Kind.RENAMED, Rating.EDITORIAL)
    ]
    assert [each.code for each in found.touched.take_down] == ["1", "3"]
    assert found.touched.mend == (ToMend("ours.yaml", 3, PATHWAY, "flat-chamber"),)
