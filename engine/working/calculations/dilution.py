"""A dilution: what is taken of one strength, and what it is made up to."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.doses.drug import LIMITS, SECOND
from chamberwise.engine.working.doses.inputs import MADE_UP_TO, STRENGTH, VOLUME
from chamberwise.engine.working.form import Calculation
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.refusal import refused
from chamberwise.engine.working.sheet import Sheet

FROM = replace(STRENGTH, symbol="c1", meaning=N_("strength it starts from"), required=True)
TAKEN = replace(VOLUME, name="taken", symbol="v1", meaning=N_("volume taken of it"), required=True)
TO = replace(MADE_UP_TO, example="1 mL", required=True)


def work(given: Given, sheet: Sheet) -> None:
    """Work the strength after making up, and the amount in all of it."""
    sheet.take("c1", given.number("strength"))
    sheet.take("v1", given.number("taken"))
    sheet.take("v2", given.number("made-up-to"))
    if sheet["v2"] < sheet["v1"]:
        raise refused(
            "made-up-to",
            _("more is taken than it is made up to"),
            _("A dilution ends in more than it began with."),
            _("Look whether the two volumes are exchanged."),
        )
    strength = sheet.work("c2", _("strength after making up"), "c1 * v1 / v2", "mg/mL")
    amount = sheet.work("m", _("amount in all of it"), "c1 * v1", "mg")
    sheet.conclude("strength", _("strength after making up"), strength, "mg/mL", 4)
    sheet.conclude("amount", _("amount in all of it"), amount, "mg", 4)
    rest = plain(sheet["v2"] - sheet["v1"])
    sheet.say(
        _(
            "Read back: {v1} mL of {c1} mg/mL, and {rest} mL of diluent, together {v2} mL "
            "of {strength} mg/mL."
        ).format(
            v1=plain(sheet["v1"]),
            c1=plain(sheet["c1"]),
            rest=rest,
            v2=plain(sheet["v2"]),
            strength=plain(strength),
        )
    )


CALCULATION = Calculation(
    name="dilution",
    title=N_("Strength after making up"),
    purpose=N_("From strength, volume taken and volume made up to, the strength that results."),
    inputs=(FROM, TAKEN, TO),
    sources=(citations.OWN,),
    limits=LIMITS,
    cautions=(N_("1 % is 10 mg/mL; 1 in 1,000 is 1 mg/mL."), SECOND),
    work=work,
)
