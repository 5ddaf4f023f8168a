"""How much lidocaine is left under the lower of the published limits."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import shown
from chamberwise.engine.working.doses.inputs import ALREADY, STRENGTH, WEIGHT
from chamberwise.engine.working.form import Calculation, Input, Kind
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.sheet import Sheet

LIMITS_INPUT = Input(
    name="limit",
    meaning="lower: 4.5 mg/kg and at most 200 mg; stricter: 3 mg/kg and at most 200 mg",
    example="lower",
    kind=Kind.WORD,
    words=("lower", "stricter"),
    required=False,
    given="lower",
)
ADRENALINE = Input(
    name="adrenaline",
    meaning="whether all of it comes with adrenaline",
    example="no",
    kind=Kind.WORD,
    words=("no", "yes"),
    required=False,
    given="no",
)
IN_HAND = replace(STRENGTH, example="20 mg/mL", required=True)
FORMULAS = {
    "lower": "min(4.5 * w, 200)",
    "stricter": "min(3 * w, 200)",
    "adrenaline": "min(7 * w, 500)",
}
PUBLISHED = (
    ("UK label, plain", Decimal(200), None, "read"),
    ("Irish label, plain", Decimal(200), Decimal("4.5"), "read"),
    ("US label, plain", Decimal(300), Decimal("4.5"), "read"),
    ("New South Wales, plain", None, Decimal(3), "read"),
    ("often taught, plain", Decimal(200), Decimal(3), "common practice"),
    ("US label, with adrenaline", Decimal(500), Decimal(7), "read"),
)


def work(given: Given, sheet: Sheet) -> None:
    """Work the ceiling, what is left of it, and the volume of that."""
    sheet.take("w", given.number("weight"))
    already = given.numbers("already")
    for place, amount in enumerate(already, start=1):
        sheet.take(f"g{place}", amount)
    with_adrenaline = given.word("adrenaline") == "yes"
    limit = "adrenaline" if with_adrenaline else given.word("limit")
    ceiling = sheet.work("M", "ceiling for this weight", FORMULAS[limit], "mg", 2)
    written = " + ".join(f"g{place}" for place in range(1, len(already) + 1))
    sheet.work("g", "already given, all routes", written, "mg", 4)
    sheet.work("left", "left under the ceiling", "max(M - g, 0)", "mg", 2)
    sheet.take("c", given.number("strength"))
    volume = sheet.work("v", "volume of what is left", "left / c", "mL", 4)
    sheet.conclude("ceiling", "ceiling", ceiling, "mg", 1)
    sheet.conclude("left", "left under it", sheet["left"], "mg", 1)
    sheet.conclude("volume", "that is, at most", volume, "mL", 1)
    if sheet["g"] >= ceiling:
        sheet.remark("Nothing is left under the ceiling.")
    _published(sheet, limit)


def _published(sheet: Sheet, limit: str) -> None:
    weight = sheet["w"]
    rows = []
    for title, flat, each_kg, mark in PUBLISHED:
        limits = [flat] if flat is not None else []
        limits += [each_kg * weight] if each_kg is not None else []
        rows.append((title, f"{shown(min(limits), 1)} mg", mark))
    sheet.tabulate("Published limits for this weight", ("limit", "ceiling", "mark"), rows)
    used = "the US label, with adrenaline" if limit == "adrenaline" else f"the {limit} one"
    sheet.remark(f"Limits differ between countries. Worked with {used}; the unit's own goes first.")


CALCULATION = Calculation(
    name="lidocaine-ceiling",
    title="Lidocaine: ceiling, and what is left of it",
    purpose="The most by weight, less what was given by every route.",
    inputs=(WEIGHT, ALREADY, IN_HAND, LIMITS_INPUT, ADRENALINE),
    sources=(
        citations.LIDOCAINE_UK,
        citations.LIDOCAINE_IRISH,
        citations.LIDOCAINE_US,
        citations.LIDOCAINE_AUSTRALIA,
        citations.HABIT,
    ),
    limits=(
        "It does not know age, heart or liver: each lowers the ceiling.",
        "It does not know other local anaesthetics, which add to the same harm.",
        "An unknown weight is not guessed; the smallest it could be is the careful one to try.",
    ),
    cautions=(
        "Every route counts: block, top-up, gel, into the chamber, and the combined mydriatic.",
        "1 % is 10 mg/mL, 2 % is 20 mg/mL. The ceiling is no aim.",
    ),
    work=work,
)
