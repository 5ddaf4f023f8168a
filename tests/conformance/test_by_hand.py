"""Every printed line, typed into a pocket calculator, gives the figure printed beside it."""

from __future__ import annotations

import math
import re
from decimal import Decimal

import pytest
from chamberwise.engine.working.refusal import RefusedError
from chamberwise.engine.working.registry import NAMES, calculation
from chamberwise.engine.working.run import worked
from chamberwise.engine.working.working import Line, Working
from hypothesis import given
from hypothesis import strategies as some

from tests.conformance.test_round_trips import corneas, lengths, refractions
from tests.conformance.working_out import example, work

KEYS = {
    "sqrt": math.sqrt,
    "max": max,
    "min": min,
    "tan": lambda degrees: math.tan(math.radians(degrees)),
}
"""What a pocket calculator has beside the four signs."""
ALLOWED = re.compile(r"(?:[0-9. ()+\-*/,]|sqrt|max|min|tan)+")


def on_a_calculator(numbers: str) -> float:
    """Return what a line of numbers comes to, worked with floats and nothing of ours."""
    keyed = numbers.replace("×", "*").replace("^", "**")
    assert ALLOWED.fullmatch(keyed), keyed
    return float(eval(keyed, {"__builtins__": {}}, KEYS))


def by_hand(working: Working) -> int:
    """Hold each line to what a calculator makes of it; return how many there were."""
    lines = [each for each in working.lines if isinstance(each, Line)]
    for each in lines:
        last_place = 10.0 ** min(int(each.value.as_tuple().exponent), 0)
        assert math.isclose(
            on_a_calculator(each.numbers), float(each.shown), abs_tol=last_place * 0.5000001
        ), each
    return len(lines)


@pytest.mark.parametrize("name", NAMES)
def test_every_line_of_every_calculation_follows(name: str) -> None:
    working = worked(calculation(name), example(calculation(name)))
    assert by_hand(working) > 0 or name == "after-care-dates"


@pytest.mark.parametrize("name", ["srk-t", "holladay-1", "hoffer-q", "lens-to-sulcus"])
@given(lengths, corneas, refractions)
def test_every_line_follows_for_any_eye(
    name: str, length: str, cornea: str, refraction: str
) -> None:
    try:
        assert by_hand(work(name, AL=length, K=cornea, target=refraction)) > 5
    except RefusedError:
        assert name == "lens-to-sulcus"


@pytest.mark.parametrize("name", ["srk-t", "holladay-1", "hoffer-q"])
@given(some.decimals("20", "30", places=2), some.decimals("39", "47", places=2))
def test_rounding_on_the_way_moves_no_figure(name: str, length: Decimal, cornea: Decimal) -> None:
    typed = {"AL": str(length), "K": str(cornea)}
    by_steps, at_once = work(name, **typed), work(name, exact=True, **typed)
    assert abs(by_steps.result("power") - at_once.result("power")) <= Decimal("0.00502")


def test_the_figure_concluded_is_that_of_its_line() -> None:
    working = work("srk-t")
    powers = [each for each in working.lines if isinstance(each, Line) and each.symbol == "P"]
    assert round(powers[0].value, 2) == working.result("power")
