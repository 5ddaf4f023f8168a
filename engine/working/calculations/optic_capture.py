"""A lens with its optic captured: the power stays, within limits that are shown."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.form import UNKNOWN, Calculation, Input, Kind, between
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.optics.inputs import EYES, PLANNED, same_eye
from chamberwise.engine.working.refusal import refused
from chamberwise.engine.working.sheet import Sheet

LEAST, MOST = Decimal("4.5"), Decimal("5.5")
"""Millimetres between which an opening holds a 6 mm optic."""

CAPTURE = Input(
    name="capture",
    meaning=N_("optic pushed back through the opening, or brought in front of it"),
    example="optic-behind",
    kind=Kind.WORD,
    words=("optic-behind", "optic-in-front"),
)
OPENING = Input(
    name="opening",
    meaning=N_("diameter of the opening in the anterior capsule"),
    example="5 mm",
    unit="mm",
    also=("cm",),
    hard=between("2", "9"),
    soft=between("4", "6"),
)
OPTIC = Input(
    name="optic",
    meaning=N_("diameter of the optic"),
    example="6 mm",
    unit="mm",
    also=("cm",),
    hard=between("5", "7"),
    soft=between("5.5", "6.5"),
)


def _condition(name: str, meaning: str, good: str) -> Input:
    words = ("yes", "no", UNKNOWN)
    return Input(name=name, meaning=meaning, example=good, kind=Kind.WORD, words=words)


CONDITIONS = (
    (_condition("edge-whole", N_("the edge of the opening is whole all round"), "yes"), "yes"),
    (_condition("centred", N_("the opening is centred"), "yes"), "yes"),
    (_condition("vitreous-in-plane", N_("vitreous lies in the plane of the opening"), "no"), "no"),
)


def work(given: Given, sheet: Sheet) -> None:
    """Work how far the optic overlaps, and show the power in each position."""
    same_eye(given, sheet)
    for condition, good in CONDITIONS:
        _refuse_unless(given, condition, good)
    sheet.take("optic", given.number("optic"))
    sheet.take("opening", given.number("opening"))
    overlap = sheet.work("o", _("optic wider than the opening"), "optic - opening", "mm", 2)
    if overlap <= 0:
        raise refused(
            "opening",
            _("the opening is as wide as the optic, or wider"),
            _("It cannot hold the optic."),
            _("See `lens-to-sulcus` for a lens in the sulcus without capture."),
        )
    if not LEAST <= sheet["opening"] <= MOST:
        sheet.remark(
            _(
                "An opening of {least} to {most} mm holds a 6 mm optic (memory and common "
                "practice). This one lies outside that."
            ).format(least=plain(LEAST), most=plain(MOST))
        )
    _powers(given, sheet)


def _refuse_unless(given: Given, condition: Input, good: str) -> None:
    said = given.word(condition.name)
    if said != good:
        raise refused(
            condition.name,
            _("capture needs `{condition}` to be {good}; it is {said}").format(
                condition=condition.name, good=good, said=said
            ),
            _("An optic that is not held lies at another depth, and may fall."),
            _("What is unknown counts as not met. See `lens-to-sulcus` and `aphakia`."),
        )


def _powers(given: Given, sheet: Sheet) -> None:
    planned = given.number("planned-lens")
    if given.word("capture") == "optic-behind":
        sheet.say(_("The optic lies near the depth of the bag, so its power stays."))
        sheet.conclude("power", _("power captured"), planned, "D", 2)
    else:
        sheet.say(_("The optic lies in front of the opening: a small shift to short sight."))
        sheet.answer(
            "power",
            _("power captured"),
            _("{planned} D, or 0.25 to 0.5 D less").format(planned=plain(planned)),
        )
    half = Decimal("0.5")
    sheet.tabulate(
        _("Where the optic lies"),
        (N_("position"), N_("power"), N_("mark")),
        (
            (
                _("optic behind the opening"),
                _("{planned} D").format(planned=plain(planned)),
                _("memory: no change"),
            ),
            (
                _("as some surgeons do it"),
                _("{low} to {high} D").format(low=plain(planned - half), high=plain(planned)),
                _("common practice: up to 0.5 D less"),
            ),
            (
                _("optic in front, haptics in the bag"),
                _("{low} to {high} D").format(
                    low=plain(planned - half), high=plain(planned - half / 2)
                ),
                _("common practice, unsure: 0.25 to 0.5 D less"),
            ),
            (_("in the sulcus, not captured"), _("see `lens-to-sulcus`"), _("other sources")),
        ),
    )


CALCULATION = Calculation(
    name="optic-capture",
    title=N_("Power of a lens with its optic captured"),
    purpose=N_("Whether the opening can hold the optic, and the power by position."),
    inputs=(
        CAPTURE,
        replace(PLANNED, meaning=N_("power planned for the bag, of this lens model")),
        OPTIC,
        OPENING,
        *(condition for condition, _good in CONDITIONS),
        *EYES,
    ),
    sources=(citations.CAPTURE, citations.RULE_OF_NINES, citations.HABIT),
    limits=(
        N_("It does not know whether the optic will stay held."),
        N_("Plate, toric and multifocal lenses are outside it."),
    ),
    cautions=(
        N_("If the capture is lost the lens lies in the sulcus, and its power no longer fits."),
        N_("After a change of plan, lens model, power, place and eye are checked aloud anew."),
    ),
    work=work,
)
