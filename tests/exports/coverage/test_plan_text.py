from __future__ import annotations

from chamberwise.engine.drill.coverage.plan import plan
from chamberwise.exports.coverage.text import plan_text

from tests.conformance.driver import VITRECTOMY, library
from tests.engine.drill.coverage.test_plan import two_exits


def test_a_plan_says_what_it_covers_and_how_sure_its_number_is() -> None:
    found = plan(library(), VITRECTOMY)
    said = plan_text(library(), found)
    assert said.startswith("Drills that cover: Anterior vitrectomy\n")
    assert "37 of 37 answers" in said
    assert "With fewer than 12 it cannot be done; whether with fewer than 13 is not" in said
    assert max(map(len, said.splitlines())) <= 78


def test_where_it_is_known_that_fewer_do_not_do_it_says_so() -> None:
    assert "With fewer it cannot be done." in plan_text(two_exits(), plan(two_exits(), "one"))


def test_what_somebody_has_met_is_not_named_as_new() -> None:
    found = plan(library(), VITRECTOMY)
    first = found.drills[0]
    said = plan_text(library(), found, met=first.answers)
    assert "0 of them not met yet" in " ".join(said.split())
    count = len(set(first.answers))
    assert f"Met so far: {count} of 37 answers; not met yet: {37 - count}." in said
    assert max(map(len, said.splitlines())) <= 78
