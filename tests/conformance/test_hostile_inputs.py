"""What is in doubt is refused and says why; no figure comes out of it in silence."""

from __future__ import annotations

from contextlib import suppress
from itertools import product

import pint
import pytest
from chamberwise.engine.working.form import Input, Kind
from chamberwise.engine.working.refusal import RefusedError
from chamberwise.engine.working.registry import calculations
from chamberwise.engine.working.run import worked
from chamberwise.engine.working.units import UnitError, factor, spelt
from hypothesis import given
from hypothesis import strategies as some

from tests.conformance.working_out import example, refusals, work

INPUTS = [(of.name, each) for of in calculations() for each in of.inputs]
NUMBERS = [(name, each) for name, each in INPUTS if each.kind in (Kind.NUMBER, Kind.SEVERAL)]
GARBAGE = (
    "1e9",
    "nan",
    "inf",
    "--5",
    "5 5 mm",
    "twenty",
    "0x1F",
    "1/0",
    "23,5",
    "1.234,5",
    "\x00",
    "٢١",
    "½",
    "~21",
)


def told(case: object) -> str:
    return case.name if isinstance(case, Input) else str(case)


@pytest.mark.parametrize(("name", "of"), NUMBERS, ids=told)
def test_no_garbage_gives_a_number(name: str, of: Input) -> None:
    for text in GARBAGE:
        if of.kind is Kind.SEVERAL and text == "5 5 mm":
            continue
        found = refusals(name, **{of.name: text})
        assert f"`{of.name}`" in found


@pytest.mark.parametrize(("name", "of"), NUMBERS, ids=told)
def test_beyond_the_hard_range_is_refused(name: str, of: Input) -> None:
    assert of.hard is not None
    for value in (of.hard.low - 1, of.hard.high + 1, -of.hard.high - 999):
        unit = "" if of.unit == "" else f" {of.unit}"
        assert f"`{of.name}`" in refusals(name, **{of.name: f"{value}{unit}"})


@pytest.mark.parametrize(("name", "of"), NUMBERS, ids=told)
def test_a_unit_of_another_thing_is_refused(name: str, of: Input) -> None:
    wrong = {"mm": "kg", "D": "kg", "kg": "mm", "": "mm"}.get(of.unit, "D")
    found = refusals(name, **{of.name: f"{of.hard.low if of.hard else 1} {wrong}"})
    assert f"`{of.name}`" in found


DOSED = ("mg", "mL", "mg/mL", "kg")
"""Units of doses: never left out, whatever the range."""
PARTS = {"of 1": 100.0}
"""Written in no unit: a share of one."""


def reach(of: Input, unit: str) -> tuple[float, float]:
    """Return the hard range of an input as it would be if numbers were meant in another unit."""
    assert of.hard is not None
    low, high = float(of.hard.low), float(of.hard.high)
    if of.is_curvature and unit == "mm":
        return 337.5 / high, 337.5 / low
    by = PARTS[unit] if unit in PARTS else float(factor(spelt(unit), spelt(of.unit)))
    return low * by, high * by


@pytest.mark.parametrize(("name", "of"), NUMBERS, ids=told)
def test_a_number_without_a_unit_is_taken_only_where_it_can_be_nothing_else(
    name: str, of: Input
) -> None:
    assert of.hard is not None
    low, high = float(of.hard.low), float(of.hard.high)
    ends = [reach(of, unit) for unit in of.also]
    ambiguous = any(start <= high and low <= end for start, end in ends)
    assert not (of.bare and ambiguous)
    assert of.bare == (not ambiguous) or of.unit in DOSED
    assert not (of.bare and of.unit in DOSED)
    if not of.bare:
        bare = of.example.split(" ")[0]
        assert "without a unit" in refusals(name, **{of.name: bare})


def test_a_radius_is_asked_about_and_never_turned_in_silence() -> None:
    assert '`K="7.7 mm"`' in refusals("srk-t", K="7.7")
    found = work("srk-t", K="7.7 mm")
    assert "337.5 / 7.7" in next(each.value for each in found.given if each.symbol == "K")


def test_the_other_eye_is_refused() -> None:
    assert "right eye was measured" in refusals("srk-t", eye="left", biometry_eye="right")
    assert any("not compared" in each for each in work("srk-t").remarks)


def test_length_and_cornea_exchanged_are_noticed() -> None:
    assert "look exchanged" in refusals("srk-t", AL="43.5", K="23.5")


def test_a_comma_is_asked_about() -> None:
    assert '`axial-length="23.5 mm"`' in refusals("srk-t", AL="23,5 mm")


def test_a_name_that_is_none_and_one_given_twice() -> None:
    assert "Did you mean `axial-length`?" in refusals("srk-t", **{"axial-lenght": "23"})
    typed = {**example(next(iter(calculations()))), "AL": "23"}
    with pytest.raises(RefusedError, match="given twice"):
        worked(next(iter(calculations())), typed)


def test_what_is_unusual_is_worked_and_remarked_on() -> None:
    assert any("is unusual" in each for each in work("srk-t", AL="31").remarks)


def test_everything_wrong_is_told_at_once() -> None:
    found = refusals("srk-t", AL="1e9", K="7.7", A="", target="5")
    assert found.count("`") > 8
    assert all(name in found for name in ("axial-length", "keratometry", "a-constant"))


@given(some.text(max_size=30), some.sampled_from(NUMBERS))
def test_no_text_brings_it_down(text: str, case: tuple[str, Input]) -> None:
    name, of = case
    with suppress(RefusedError):
        assert work(name, **{of.name: text}).results


THEIRS = pint.UnitRegistry()
KNOWN = ("mm", "cm", "in", "kg", "lb", "g", "mg", "mL", "mmHg")


@pytest.mark.parametrize(("unit", "to"), list(product(KNOWN, KNOWN)))
def test_units_agree_with_those_of_the_library(unit: str, to: str) -> None:
    """Our few definitions against pint's own registry."""
    try:
        expected = THEIRS.Quantity(1.0, unit.replace("in", "inch")).to(to.replace("in", "inch"))
    except pint.DimensionalityError:
        with pytest.raises(UnitError):
            factor(unit, to)
    else:
        assert float(factor(unit, to)) == pytest.approx(expected.magnitude, rel=1e-9)
