"""Combinations declared impossible: looked at again before it is too late, or a problem."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.cases.case import Case
from chamberwise.engine.cases.summary import Summary, summary
from chamberwise.engine.cases.table import cases
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.pathway import CaseTable, Impossible
from chamberwise.engine.model.step import Step
from chamberwise.engine.model.words import About

from tests.support.build import act, ask, do, end, finding, library, pathway

GONE_YET_NONE = Impossible(Condition((("piece", ("gone",)), ("vitreous", ("none",)))), "Seldom.")
TABLE = CaseTable(("piece", "vitreous"), (), (("vitreous", "forward"),), (GONE_YET_NONE,))
ACTS = [
    act("place-lens", known={"lens": "bag"}, stale="vitreous"),
    act("note-lens", known={"lens": "bag"}),
    act("rinse", stale="vitreous"),
]


def looking(*steps: Step, table: CaseTable = TABLE, about: About = About.EYE) -> Library:
    """A pathway that asks for the piece, then for vitreous, then goes on to `next`."""
    return library(
        pathway(
            "one",
            ask("piece-left", "piece", gone="where", there="where"),
            ask("where", "vitreous", none="next", forward="done", unclear="done"),
            *steps,
            end("done"),
            cases=table,
        ),
        findings=[
            finding("piece", "gone there"),
            finding("vitreous", "none forward"),
            replace(finding("lens", "none bag"), about=about),
        ],
        acts=ACTS,
    )


def of_gone_yet_none(one: Library) -> Case:
    (case,) = [case for case in cases(one, "one") if case.improbable]
    assert case.combination == (("piece", "gone"), ("vitreous", "none"))
    return case


STAIN = ask("stain", "vitreous", none="place", forward="done")


def test_a_second_look_settles_it() -> None:
    case = of_gone_yet_none(looking(do("next", "stain", acts="rinse"), STAIN, do("place", "done")))
    (doubt,) = case.doubts
    assert (doubt.stands_at, doubt.looked_at) == (Place("one", "where"), Place("one", "stain"))
    assert (doubt.between, doubt.is_settled, case.problem) == (("rinse",), True, "")


def test_none_at_all_is_a_problem() -> None:
    case = of_gone_yet_none(looking(do("next", "done", acts="note-lens")))
    assert case.problem == "declared impossible, yet not looked at again after `where`"
    assert case.outcome == Place("one", "done")
    assert not case.doubts[0].is_settled


def test_one_that_comes_after_what_cannot_be_undone_is_a_problem() -> None:
    late = looking(do("next", "stain", acts="rinse place-lens"), STAIN, do("place", "done"))
    case = of_gone_yet_none(late)
    assert case.problem == "declared impossible, yet `next` comes before the second look"
    assert case.doubts[0].looked_at == Place("one", "stain")


def test_what_leaves_the_eye_as_it_is_or_changes_none_for_certain_can_be_undone() -> None:
    for acts in ("rinse", "rinse note-lens"):
        steps = do("next", "stain", acts=acts), STAIN, do("place", "done")
        assert of_gone_yet_none(looking(*steps)).problem == ""
    of_the_kit = looking(
        do("next", "stain", acts="place-lens"), STAIN, do("place", "done"), about=About.KIT
    )
    assert of_gone_yet_none(of_the_kit).problem == ""


def test_answers_that_never_come_together_need_no_second_look() -> None:
    """Vitreous is found forward on a second look before the piece is asked for."""
    one = library(
        pathway(
            "one",
            ask("where", "vitreous", none="rinse", forward="rinse"),
            do("rinse", "again", acts="rinse"),
            ask("again", "vitreous", none="left", forward="left"),
            ask("left", "piece", gone="done", there="done"),
            end("done"),
            cases=TABLE,
        ),
        findings=[
            finding("piece", "gone there"),
            finding("vitreous", "none forward"),
            finding("lens", "none bag"),
        ],
        acts=ACTS,
    )
    (doubt,) = of_gone_yet_none(one).doubts
    assert (doubt.stands_at, doubt.looked_at, doubt.is_settled) == (None, None, True)


def test_each_declaration_is_judged_by_itself() -> None:
    gone = Impossible(Condition((("piece", ("gone",)),)), "Pieces stay.")
    table = replace(TABLE, impossible=(GONE_YET_NONE, gone))
    one = looking(do("next", "stain", acts="rinse"), STAIN, do("place", "done"), table=table)
    both = cases(one, "one")[0]
    assert [each.because for each in both.doubts] == ["Seldom.", "Pieces stay."]
    assert both.problem == "declared impossible, yet not looked at again after `piece-left`"


def test_the_summary_counts_each_case_once() -> None:
    settled = cases(looking(do("next", "stain", acts="rinse"), STAIN, do("place", "done")), "one")
    assert summary(settled) == Summary(4, 0, 0, 1, 0)
    unsettled = cases(looking(do("next", "done")), "one")
    assert summary(unsettled) == Summary(4, 1, 0, 0, 0)
