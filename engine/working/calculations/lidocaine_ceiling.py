"""How much lidocaine is left under the lower of the published limits."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import shown
from chamberwise.engine.working.doses.inputs import ALREADY, STRENGTH, WEIGHT
from chamberwise.engine.working.form import Calculation, Input, Kind
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.marks import told_mark
from chamberwise.engine.working.sheet import Sheet

LIMITS_INPUT = Input(
    name="limit",
    meaning=N_("lower: 4.5 mg/kg and at most 200 mg; stricter: 3 mg/kg and at most 200 mg"),
    example="lower",
    kind=Kind.WORD,
    words=("lower", "stricter"),
    required=False,
    given="lower",
)
ADRENALINE = Input(
    name="adrenaline",
    meaning=N_("whether all of it comes with adrenaline"),
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
WORKED_WITH = {
    "lower": N_(
        "Limits differ between countries. Worked with the lower one; the unit's own goes first."
    ),
    "stricter": N_(
        "Limits differ between countries. Worked with the stricter one; the unit's own goes first."
    ),
    "adrenaline": N_(
        "Limits differ between countries. Worked with the US label, with adrenaline; the unit's "
        "own goes first."
    ),
}
PUBLISHED = (
    (N_("UK label, plain"), Decimal(200), None, "read"),
    (N_("Irish label, plain"), Decimal(200), Decimal("4.5"), "read"),
    (N_("US label, plain"), Decimal(300), Decimal("4.5"), "read"),
    (N_("New South Wales, plain"), None, Decimal(3), "read"),
    (N_("often taught, plain"), Decimal(200), Decimal(3), "common practice"),
    (N_("US label, with adrenaline"), Decimal(500), Decimal(7), "read"),
)


def work(given: Given, sheet: Sheet) -> None:
    """Work the ceiling, what is left of it, and the volume of that."""
    sheet.take("w", given.number("weight"))
    already = given.numbers("already")
    for place, amount in enumerate(already, start=1):
        sheet.take(f"g{place}", amount)
    with_adrenaline = given.word("adrenaline") == "yes"
    limit = "adrenaline" if with_adrenaline else given.word("limit")
    ceiling = sheet.work("M", _("ceiling for this weight"), FORMULAS[limit], "mg", 2)
    written = " + ".join(f"g{place}" for place in range(1, len(already) + 1))
    sheet.work("g", _("already given, all routes"), written, "mg", 4)
    sheet.work("left", _("left under the ceiling"), "max(M - g, 0)", "mg", 2)
    sheet.take("c", given.number("strength"))
    volume = sheet.work("v", _("volume of what is left"), "left / c", "mL", 4)
    sheet.conclude("ceiling", _("ceiling"), ceiling, "mg", 1)
    sheet.conclude("left", _("left under it"), sheet["left"], "mg", 1)
    sheet.conclude("volume", _("that is, at most"), volume, "mL", 1)
    if sheet["g"] >= ceiling:
        sheet.remark(_("Nothing is left under the ceiling."))
    _published(sheet, limit)


def _published(sheet: Sheet, limit: str) -> None:
    weight = sheet["w"]
    rows = []
    for title, flat, each_kg, mark in PUBLISHED:
        limits = [flat] if flat is not None else []
        limits += [each_kg * weight] if each_kg is not None else []
        rows.append(
            (_(title), _("{limits} mg").format(limits=shown(min(limits), 1)), told_mark(mark))
        )
    sheet.tabulate(
        _("Published limits for this weight"), (N_("limit"), N_("ceiling"), N_("mark")), rows
    )
    sheet.remark(_(WORKED_WITH[limit]))


CALCULATION = Calculation(
    name="lidocaine-ceiling",
    title=N_("Lidocaine: ceiling, and what is left of it"),
    purpose=N_("The most by weight, less what was given by every route."),
    inputs=(WEIGHT, ALREADY, IN_HAND, LIMITS_INPUT, ADRENALINE),
    sources=(
        citations.LIDOCAINE_UK,
        citations.LIDOCAINE_IRISH,
        citations.LIDOCAINE_US,
        citations.LIDOCAINE_AUSTRALIA,
        citations.HABIT,
    ),
    limits=(
        N_("It does not know age, heart or liver: each lowers the ceiling."),
        N_("It does not know other local anaesthetics, which add to the same harm."),
        N_("An unknown weight is not guessed; the smallest it could be is the careful one to try."),
    ),
    cautions=(
        N_("Every route counts: block, top-up, gel, into the chamber, and the combined mydriatic."),
        N_("1 % is 10 mg/mL, 2 % is 20 mg/mL. The ceiling is no aim."),
    ),
    work=work,
)
