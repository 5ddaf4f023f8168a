"""Every kind of sheet of every shipped pathway is printed without an error of the audit."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

import pytest
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.printing.auditing import audited
from chamberwise.exports.printing.kind import Kind
from chamberwise.exports.printing.kinds import ON_A4, usual
from chamberwise.exports.printing.printing import Job, laid_out, ordered

from tests.exports.flow.stage import shipped
from tests.support.thorough import cases

TODAY = date(2026, 11, 25)
SMALL, LARGE = (Paper.A4, Paper.A3), (Paper.A2, Paper.A1)


def wanted(papers: tuple[Paper, ...]) -> Iterator[tuple[str, Kind, Sized]]:
    for name, pathway in shipped().pathways.items():
        for kind in Kind:
            if kind is Kind.CASE_TABLE and pathway.cases is None:
                continue
            for paper in papers:
                yield from ((name, kind, sized) for sized in sizes(kind, paper))


def sizes(kind: Kind, paper: Paper) -> list[Sized]:
    if kind in ON_A4:
        return [usual(kind)] if paper is Paper.A4 else []
    return [Sized(paper, turn) for turn in Turn] if kind is Kind.WALL_CHART else [Sized(paper)]


@pytest.mark.parametrize(("name", "kind", "sized"), cases(wanted(SMALL), wanted(LARGE)), ids=str)
def test_no_sheet_has_an_error(name: str, kind: Kind, sized: Sized) -> None:
    laid = laid_out(ordered(Job(shipped(), name, TODAY), [(kind, sized)]))
    (report,) = audited(laid).reports
    assert report.errors == ()
    assert all(each.applies for each in report.judged if each.rule.startswith("DOC-0"))
