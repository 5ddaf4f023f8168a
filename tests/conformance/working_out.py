"""Driving the calculations: from what is typed to a figure, and formulas without their ranges."""

from __future__ import annotations

from decimal import Decimal

from chamberwise.engine.working.form import Calculation
from chamberwise.engine.working.optics import vergence
from chamberwise.engine.working.optics.formulas import FORMULAS, constant_from_a
from chamberwise.engine.working.refusal import RefusedError
from chamberwise.engine.working.registry import calculation
from chamberwise.engine.working.run import worked
from chamberwise.engine.working.sheet import Sheet
from chamberwise.engine.working.working import Working

ALSO = {"holladay-1": {"A": "118.7"}, "hoffer-q": {"A": "118.7"}}
"""What an example needs beside the inputs that are always needed."""
ONE_OF = {
    "list-risk": {"cases": "8", "rate": "1.01 %"},
    "dose": {"amount": "1 mg", "volume": "0.1 mL"},
}


def example(of: Calculation) -> dict[str, str]:
    """Return values that work, from the inputs' own examples."""
    typed = {each.name: each.example for each in of.inputs if each.required}
    return typed | ALSO.get(of.name, {}) | ONE_OF.get(of.name, {})


def work(name: str, *, exact: bool = False, **typed: str) -> Working:
    """Work a calculation from its example, with other values in some places.

    An empty value takes an input away; underscores stand for hyphens.
    """
    of = calculation(name)
    values = example(of)
    for key, value in typed.items():
        found = of.input(key.replace("_", "-"))
        name = found.name if found else key
        for other in [each for each in values if of.input(each) is found and found]:
            del values[other]
        if value:
            values[name] = value
    return worked(of, values, exact=exact)


def refusals(name: str, **typed: str) -> str:
    """Return why a calculation is refused. Raises `AssertionError` where it is not."""
    try:
        found = work(name, **typed)
    except RefusedError as error:
        return "\n".join(map(str, error.refusals))
    raise AssertionError(f"{name} gave {[each.shown for each in found.results]}")


def eye(length: str, cornea: str, refraction: str = "0", **symbols: str) -> Sheet:
    """Return an exact sheet with an eye on it."""
    sheet = Sheet(exact=True)
    for symbol, value in {"AL": length, "K": cornea, "Rx": refraction, **symbols}.items():
        sheet.take(symbol, value)
    return sheet


def power(formula: str, length: str, cornea: str, **constant: str) -> Decimal:
    """Return the power for emmetropia by a formula, without the ranges of the inputs."""
    sheet = eye(length, cornea, **constant)
    found = FORMULAS[formula]
    if "A" in constant:
        constant_from_a(sheet, found)
    found.position(sheet)
    return found.power(sheet)


def thin(length: str, cornea: str, position: str, refraction: str = "0") -> Decimal:
    """Return the power by thin-lens vergence."""
    return vergence.power(eye(length, cornea, refraction, ELP=position, V="12"))


def radius(millimetres: str) -> str:
    """Return the power of a cornea by its radius."""
    return str(Decimal("337.5") / Decimal(millimetres))
