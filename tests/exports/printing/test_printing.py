"""From an order to a document: stamps, control, and one document of several kinds."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Status
from chamberwise.engine.reading.library import load_library
from chamberwise.engine.stamp.verdict import stamps
from chamberwise.exports.control.content import DRAFT, EXPIRED, TEMPLATE
from chamberwise.exports.control.extract import control_of
from chamberwise.exports.printing import kinds
from chamberwise.exports.printing.kind import Kind
from chamberwise.exports.printing.kinds import NotMadeError, maker, usual
from chamberwise.exports.printing.printing import (
    Job,
    UnfitSheetsError,
    laid_out,
    ordered,
    sheet_of,
    told_as_text,
)

from tests.exports.printing.rooms import use_test_rooms

LIBRARY = load_library(Path(__file__).parents[2] / "library").library
NAME = "pressing-lids"
TODAY = date(2026, 11, 25)
EVERY = [(kind, usual(kind)) for kind in Kind]


def job(library: Library = LIBRARY, **more: float) -> Job:
    return Job(library, NAME, TODAY, unit="Eye unit", **more)  # type: ignore[arg-type]


def test_every_kind_has_the_stamp_that_the_library_gives_it() -> None:
    now = stamps(LIBRARY, [kind.value for kind in Kind])
    orders = ordered(job(), EVERY)
    assert [now[order.control.code].sheet for _, order in orders] == [kind.value for kind in Kind]
    assert {now[order.control.code].pathway for _, order in orders} == {NAME}


@pytest.mark.parametrize("status", list(Status))
def test_only_an_approved_pathway_names_who_approved_it(status: Status) -> None:
    pathway = replace(LIBRARY.pathways[NAME], status=status)
    control = control_of(pathway, "wall chart", TODAY, "code", (), "Eye unit")
    assert (control.approved_by is not None) == (status is Status.APPROVED)
    assert (DRAFT in control.marks) == (status is not Status.APPROVED)
    later = control_of(pathway, "wall chart", date(2099, 1, 1), "code")
    assert {EXPIRED, TEMPLATE} <= set(later.marks)
    assert control.document == NAME
    assert (control.edition, control.authors) == (pathway.edition, pathway.authors)


def test_several_kinds_are_one_document_in_order(monkeypatch: pytest.MonkeyPatch) -> None:
    use_test_rooms(monkeypatch)
    laid = laid_out(ordered(job(), EVERY))
    whole = sheet_of(laid)
    assert whole.pages == tuple(page for each in laid for page in each.pages)
    assert all(each.order.control.code in whole.subject for each in laid)
    assert sheet_of(laid[:1]).title.endswith(": wall chart")
    assert whole.made == TODAY


def test_every_kind_that_does_not_fit_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    use_test_rooms(monkeypatch)
    with pytest.raises(UnfitSheetsError) as raised:
        laid_out(ordered(job(distance=9.0), EVERY))
    assert [kind for kind, _ in raised.value.found] == list(Kind)


def test_the_text_form_carries_marks_and_control(monkeypatch: pytest.MonkeyPatch) -> None:
    use_test_rooms(monkeypatch)
    orders = ordered(Job(LIBRARY, NAME, date(2099, 1, 1)), EVERY[:2])
    text = told_as_text(orders)
    assert text.count(EXPIRED) == text.count(TEMPLATE) == 2
    assert text.count("Follow local protocol.") == 3
    assert all(f"Stamp {order.control.code}." in text for _, order in orders)
    assert "\u00a0" not in text


def test_a_fault_inside_a_room_is_not_taken_for_a_missing_room(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    folder = tmp_path / "faulty_room"
    folder.mkdir()
    (folder / "__init__.py").write_text("")
    (folder / "make.py").write_text("import no_such_module\n")
    monkeypatch.syspath_prepend(tmp_path)
    monkeypatch.setattr(kinds, "ROOMS", dict.fromkeys(Kind, kinds.Room("faulty_room", "x")))
    with pytest.raises(ModuleNotFoundError, match="no_such_module"):
        maker(Kind.FULL)
    monkeypatch.setattr(kinds, "ROOMS", dict.fromkeys(Kind, kinds.Room("no_such_room", "x")))
    with pytest.raises(NotMadeError, match="full pathway"):
        maker(Kind.FULL)
