"""The planned lens moved to the sulcus: vergence and every published table side by side."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain, pointed, shown
from chamberwise.engine.working.form import Calculation, Input, Kind
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.optics import sulcus, vergence
from chamberwise.engine.working.optics.inputs import (
    AXIAL_LENGTH,
    EYES,
    KERATOMETRY,
    LENS_POSITION,
    PLANNED,
    STOCK,
    TARGET,
    VERTEX,
    same_eye,
)
from chamberwise.engine.working.optics.stocked import around
from chamberwise.engine.working.refusal import refused
from chamberwise.engine.working.sheet import Sheet

SHIFTS = ("0.5", "0.75")
FITTING = ("three-piece", "one-piece-pmma")
SHORT = Decimal(22)
CHOICES = ("vergence-0.5", "vergence-0.75", *(table.name for table in sulcus.BANDS))

LENS_TYPE = Input(
    name="lens-type",
    meaning=N_("how the lens for the sulcus is built"),
    example="three-piece",
    kind=Kind.WORD,
    words=(*FITTING, "one-piece-acrylic", "plate-haptic", "toric", "multifocal"),
)
CHOICE = Input(
    name="choice",
    meaning=N_("the way the unit has chosen, to be marked"),
    example="vergence-0.5",
    kind=Kind.WORD,
    words=CHOICES,
    required=False,
)


def work(given: Given, sheet: Sheet) -> None:
    """Work both shifts, put the published tables beside them, and mark the unit's choice."""
    same_eye(given, sheet)
    refuse_unfit(given.word("lens-type"))
    _eye(given, sheet)
    planned = given.number("planned-lens")
    sheet.head(_("The planned lens in the bag"))
    vergence.at_cornea(sheet)
    vergence.arriving(sheet)
    sheet.work("b", _("from the bag to the retina"), "1336 / (P + W)", "mm")
    rows = []
    for shift in SHIFTS:
        rows.append(_by_vergence(given, sheet, Decimal(shift), planned))
    rows += sulcus.rows_of_bands(planned)
    chosen = given.word("choice")
    marked = [(_marked(row[0], chosen), *row[1:]) for row in rows]
    sheet.tabulate(
        _("Every way side by side"), (N_("way"), N_("change"), N_("power"), N_("to know")), marked
    )
    _remarks(given, sheet, chosen)


def refuse_unfit(lens_type: str) -> None:
    """Refuse a lens that does not belong in the sulcus. Raises `RefusedError`."""
    if lens_type not in FITTING:
        raise refused(
            "lens-type",
            _("a {lens_type} lens does not belong in the sulcus").format(lens_type=lens_type),
            _(
                "Of 30 eyes referred with one-piece acrylic lenses there, 28 needed surgery "
                "(Chang 2009, read); plate, toric and multifocal optics are kept to a secure "
                "bag (common practice)."
            ),
            _(
                "Work it for a three-piece or one-piece PMMA lens, or see `optic-capture` and "
                "`aphakia`."
            ),
        )


def _eye(given: Given, sheet: Sheet) -> None:
    sheet.take("P", given.number("planned-lens"))
    sheet.take("K", given.number("keratometry"))
    sheet.take("ELP", given.number("lens-position"))
    sheet.take("V", given.number("vertex-distance"))
    sheet.take("Rx", given.number("target"))
    sheet.remark(
        _("The vergence takes it that the planned lens would have left the refraction aimed at.")
    )


def _by_vergence(
    given: Given, sheet: Sheet, shift: Decimal, planned: Decimal
) -> tuple[str, str, str, str]:
    sheet.head(_("{shift} mm forward").format(shift=plain(shift)))
    power = sulcus.moved(sheet, shift)
    name = f"vergence-{pointed(shift)}"
    sheet.conclude(name, _("power {shift} mm forward").format(shift=plain(shift)), power, "D", 2)
    told = [_stocked(sheet, lens, shift) for lens in around(power, given.numbers("stock")) if lens]
    change = shown(power - planned, 2, sign=True)
    return (
        name,
        _("{change} D").format(change=change),
        _("{power} D").format(power=shown(power, 2)),
        "; ".join(told) or _("no such lens in stock"),
    )


def _stocked(sheet: Sheet, lens: Decimal, shift: Decimal) -> str:
    sheet.say(_("A lens of {lens} D there:").format(lens=plain(lens)))
    sheet.take("Pl", lens)
    left = sulcus.left_in_sulcus(sheet)
    told = shown(left, 2, sign=True)
    title = _("{lens} D leaves, {shift} mm forward").format(lens=plain(lens), shift=plain(shift))
    sheet.conclude(f"{pointed(lens)}-leaves-{pointed(shift)}", title, left, "D", 2, sign=True)
    return _("{lens} D leaves {told} D").format(lens=plain(lens), told=told)


def _marked(name: str, chosen: str) -> str:
    return _("{name} [unit's choice]").format(name=name) if name == chosen else name


def _remarks(given: Given, sheet: Sheet, chosen: str) -> None:
    if not chosen:
        sheet.remark(_("The unit's choice is NOT SET: nothing is marked."))
    if "axial-length" in given and given.number("axial-length") < SHORT:
        sheet.remark(
            _(
                "The eye is shorter than 22 mm: such eyes missed their aim by more in the "
                "series of Dubey (read)."
            )
        )
    sheet.remark(
        _(
            "The nines and the chart equal a shift of 0.4 to 0.5 mm; in 91 eyes the "
            "surprise was -1.04 D, which asks for about 0.75 mm (read; the shift is our "
            "inference)."
        )
    )
    sheet.remark(
        _(
            "A series of 30 eyes points the other way: -0.5 D less left -0.4 D, -1 D less "
            "left -0.7 D (read; small, not random)."
        )
    )


CALCULATION = Calculation(
    name="lens-to-sulcus",
    title=N_("The planned lens moved to the sulcus"),
    purpose=N_("What the power planned for the bag becomes in the sulcus, by every published way."),
    inputs=(
        PLANNED,
        LENS_TYPE,
        KERATOMETRY,
        TARGET,
        replace(LENS_POSITION, required=False, given=f"{sulcus.BAG_POSITION} mm"),
        VERTEX,
        replace(AXIAL_LENGTH, required=False),
        STOCK,
        CHOICE,
        *EYES,
    ),
    sources=(
        citations.OPTICS,
        citations.BAG_SULCUS_CHART,
        citations.RULE_OF_NINES,
        citations.DUBEY,
        citations.SULCUS_SERIES,
        citations.SULCUS_ABSTRACT,
        citations.ONE_PIECE,
        citations.OWN,
    ),
    limits=(
        N_(
            "It does not know how far forward this lens will come to lie: 0.5 and 0.75 mm "
            "are shown."
        ),
        N_("It is of the same lens model. For another one `another-lens` comes first."),
        N_("It is not for a captured optic: see `optic-capture`."),
    ),
    cautions=(
        N_(
            "A lens for the sulcus is three-piece or one-piece PMMA, long enough (13 mm or "
            "more, common practice), with an optic of 6 mm or more and a rounded edge."
        ),
        N_("After a change of plan, lens model, power, place and eye are checked aloud anew."),
    ),
    work=work,
)
