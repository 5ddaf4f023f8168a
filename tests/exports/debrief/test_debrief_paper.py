"""A debrief on paper: one side of A4, whatever happened, the same to the byte."""

from __future__ import annotations

from datetime import date

from chamberwise.exports.debrief.content import STANDING
from chamberwise.exports.debrief.placing import debrief_page
from chamberwise.exports.debrief.sheet import debrief_paper
from chamberwise.exports.paper.sheet import Page, Text
from chamberwise.exports.typesetting.measuring import Ruler

from tests.support.by_the_book import doings, drilled
from tests.support.debriefed import by_the_book, content, eventful


def words(page: Page) -> str:
    texts = [each for each in page.items if isinstance(each, Text)]
    return "\n".join("".join(run.text for run in text.runs) for text in texts)


def test_everything_that_matters_stands_on_the_page_and_inside_it() -> None:
    of = content(eventful())
    page = debrief_page(of, Ruler())
    said = words(page).replace("\u00a0", " ")
    wanted = [of.title, of.result, *of.talking, *of.questions, of.take_away, of.next_due, STANDING]
    for each in wanted:
        assert each in said, each
    for item in page.items:
        if isinstance(item, Text):
            assert item.x >= 0
            assert item.y + item.height <= page.format.height - 10


def test_a_long_run_is_cut_role_by_role_and_says_how_much() -> None:
    script = [f"{place * 3} {doing}" for place, doing in enumerate(doings()[::2])]
    said = words(debrief_page(content(drilled(script)), Ruler()))
    assert "; and " in said
    assert " more" in said


def test_the_same_journal_gives_the_same_bytes() -> None:
    on = date(2026, 11, 25)
    first = debrief_paper(content(by_the_book()), on).pdf
    assert first.startswith(b"%PDF")
    assert debrief_paper(content(by_the_book()), on).pdf == first
