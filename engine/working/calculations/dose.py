"""Amount, volume and strength: the third from two, or all three compared."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.doses.drug import LIMITS, SECOND
from chamberwise.engine.working.doses.inputs import AMOUNT, STRENGTH, VOLUME
from chamberwise.engine.working.doses.triple import hold_together
from chamberwise.engine.working.form import Calculation
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.refusal import refused
from chamberwise.engine.working.sheet import Sheet

THREE = (AMOUNT, VOLUME, STRENGTH)
FROM_TWO = {
    "amount": ("m", N_("amount"), "v * c", "mg"),
    "volume": ("v", N_("volume"), "m / c", "mL"),
    "strength": ("c", N_("strength"), "m / v", "mg/mL"),
}


def work(given: Given, sheet: Sheet) -> None:
    """Work the third figure, or hold all three together."""
    missing = [each.name for each in THREE if each.name not in given]
    if len(missing) > 1:
        raise refused(
            missing[0],
            _("`{missing}` and `{missing_2}` are missing").format(
                missing=missing[0], missing_2=missing[1]
            ),
            _("Two of the three figures are needed for the third."),
            _("Give two of `amount`, `volume` and `strength`."),
        )
    for each in THREE:
        if each.name in given:
            sheet.take(each.symbol, given.number(each.name))
    name = missing[0] if missing else "amount"
    symbol, title, written, unit = FROM_TWO[name]
    worked = sheet.work(symbol, _(title), written, unit)
    if not missing:
        hold_together(given.number("amount"), given.number("volume"), given.number("strength"))
        sheet.say(_("The three figures agree."))
    sheet.conclude(name, _(title), worked, unit, 4)
    amount, volume, strength = (plain(sheet[each.symbol]) for each in THREE)
    sheet.say(
        _("Read back: {amount} mg in {volume} mL of {strength} mg/mL.").format(
            amount=amount, volume=volume, strength=strength
        )
    )


CALCULATION = Calculation(
    name="dose",
    title=N_("Amount, volume and strength of a dose"),
    purpose=N_("The third figure from two; with all three, whether they agree."),
    inputs=THREE,
    sources=(citations.OWN,),
    limits=LIMITS,
    cautions=(N_("1 % is 10 mg/mL; 1 in 1,000 is 1 mg/mL."), SECOND),
    work=work,
    shown=("amount", "volume"),
)
