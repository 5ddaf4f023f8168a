"""Another lens model at the table: recomputed, with the shortcut and its error beside it."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import shown
from chamberwise.engine.working.form import Calculation
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.optics.by_formula import CAUTIONS, LIMITS
from chamberwise.engine.working.optics.changed_constant import (
    power_with,
    shortcut,
    take_eye_if_known,
)
from chamberwise.engine.working.optics.inputs import (
    A_CONSTANT,
    AXIAL_LENGTH,
    EYES,
    KERATOMETRY,
    PLANNED,
    TARGET,
)
from chamberwise.engine.working.sheet import Sheet

OLD = replace(
    A_CONSTANT, name="planned-a-constant", symbol="A1", meaning=N_("A of the planned lens")
)
NEW = replace(
    A_CONSTANT, name="new-a-constant", symbol="A2", meaning=N_("A of the lens at the table")
)


def work(given: Given, sheet: Sheet) -> None:
    """Work the power by both constants, and the shortcut beside them."""
    known = take_eye_if_known(given, sheet)
    sheet.take("Pp", given.number("planned-lens"))
    sheet.take("A1", given.number(OLD.name))
    sheet.take("A2", given.number(NEW.name))
    if known:
        sheet.head(_("With the constant of the planned lens"))
        sheet.take("P1", power_with(sheet, sheet["A1"]))
        sheet.head(_("With the constant of the lens at the table"))
        sheet.take("P2", power_with(sheet, sheet["A2"]))
        sheet.head(_("Change"))
        change = sheet.work("c", _("change of power"), "P2 - P1", "D")
        power = sheet.work("Pn", _("power of the other lens"), "Pp + c", "D")
        sheet.conclude("change", _("change, by SRK/T"), change, "D", 2, sign=True)
        sheet.conclude("power", _("power of the other lens, by SRK/T"), power, "D", 2)
    short = shortcut(sheet, known)
    rows = [(_("difference of constants (shortcut)"), _("{short} D").format(short=shown(short, 2)))]
    if known:
        rows.insert(0, (_("by SRK/T from this eye"), _("{pn} D").format(pn=shown(sheet["Pn"], 2))))
    sheet.tabulate(_("Side by side"), (N_("way"), N_("power")), rows)


CALCULATION = Calculation(
    name="another-lens",
    title=N_("Another lens model at the table"),
    purpose=N_("The power of another model for the same eye, place and aim."),
    inputs=(
        PLANNED,
        OLD,
        NEW,
        replace(TARGET, required=False, given="0 D"),
        replace(AXIAL_LENGTH, required=False),
        replace(KERATOMETRY, required=False),
        *EYES,
    ),
    sources=(citations.SRK_T, citations.CONSTANT_SHORTCUT, citations.OWN),
    limits=(*LIMITS[:2], N_("It keeps the lens in the bag; the sulcus is a step of its own.")),
    cautions=CAUTIONS,
    work=work,
)
