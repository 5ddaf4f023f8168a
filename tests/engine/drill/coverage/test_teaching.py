from __future__ import annotations

import pytest
from chamberwise.engine.drill.coverage.teaching import narrowing, teaching
from chamberwise.engine.drill.measures.proportion import Share
from scipy.stats import beta


@pytest.mark.parametrize(("count", "of"), [(0, 0), (3, 3), (2, 7), (40, 90)])
def test_one_more_try_narrows_by_what_a_reference_library_says(count: int, of: int) -> None:
    a, b = 1 + count, 1 + of - count
    well = a / (a + b)
    after = well * beta(a + 1, b).var() + (1 - well) * beta(a, b + 1).var()
    assert narrowing(Share(count, of)) == pytest.approx(beta(a, b).var() - after)


def test_the_stage_nobody_tried_comes_first_not_the_one_that_fails_most() -> None:
    contexts = {"nucleus": ("stop", "fill"), "cortex": ("stop", "fill"), "lens": ("stop", "fill")}
    tallies = {
        ("stop", "nucleus"): Share(0, 12),
        ("fill", "nucleus"): Share(0, 12),
        ("stop", "cortex"): Share(2, 4),
        ("fill", "cortex"): Share(2, 4),
    }
    assert [each.context for each in teaching(tallies, contexts)] == ["lens", "cortex", "nucleus"]


def test_between_equals_the_order_given_decides() -> None:
    contexts = {"b": ("stop",), "a": ("stop",)}
    assert [each.context for each in teaching({}, contexts)] == ["b", "a"]
