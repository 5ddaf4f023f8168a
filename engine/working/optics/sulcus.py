"""A lens moved forward from the bag into the sulcus, by vergence and by published bands.

A band gives the change of power for planned powers from one end to the other, both included.
Where bands of one table meet in a value, or leave a gap between them, both sides are shown.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.words import Mark
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.form import Range, between
from chamberwise.engine.working.marks import told_mark
from chamberwise.engine.working.sheet import Sheet

BAG_POSITION = "5.2"
CHART_CORNEA = "43.1"
"""The position and, as we worked out, the cornea that the published chart was made with."""


@dataclass(frozen=True, slots=True)
class Band:
    """A range of planned powers and the change for them: one figure, or from one to another.

    Its lower end belongs to it unless it begins `above` that.
    """

    powers: Range
    change: tuple[Decimal, ...]
    mark: Mark = Mark.READ
    above: bool = False

    def __contains__(self, planned: Decimal) -> bool:
        return planned in self.powers and not (self.above and planned == self.powers.low)


@dataclass(frozen=True, slots=True)
class BandTable:
    """A published table of bands, and what its edges are worth."""

    name: str
    title: str
    bands: tuple[Band, ...]
    edges: str
    word: str = ""


def _band(low: str, high: str, *change: str, mark: Mark = Mark.READ, above: bool = False) -> Band:
    return Band(between(low, high), tuple(map(Decimal, change)), mark, above)


LOWEST, HIGHEST = "-15", "50"


NINES = BandTable(
    "rule-of-nines",
    N_("rule of nines"),
    (
        _band(LOWEST, "9", "0"),
        _band("9", "18", "-0.5"),
        _band("18", "27", "-1"),
        _band("27", HIGHEST, "-1.5"),
    ),
    N_("9, 18 and 27 D stand in two bands in every copy seen"),
)
CHART = BandTable(
    "chart",
    N_("bag and sulcus chart"),
    (
        _band(LOWEST, "9", "0", mark=Mark.MEMORY),
        _band("9.5", "17", "-0.5"),
        _band("17.5", "28", "-1"),
        _band("28.5", HIGHEST, "-1.5"),
    ),
    N_("read from 15 to 30 D; the ends at 9 and 9.5 D are from memory of an older print"),
)
DUBEY = BandTable(
    "dubey",
    N_("Dubey 2012"),
    (_band("18", "25", "-1"), _band("25", HIGHEST, "-1.5", "-2", above=True)),
    N_("36 lenses; nothing is said below 18 D"),
    N_("at least"),
)
BANDS = (NINES, CHART, DUBEY)


def changes(table: BandTable, planned: Decimal) -> tuple[Band, ...]:
    """Return the bands a planned power lies in; at an edge both, in a gap those beside it."""
    inside = tuple(band for band in table.bands if planned in band)
    if inside:
        return inside
    below = [band for band in table.bands if band.powers.high < planned]
    above = [band for band in table.bands if band.powers.low > planned]
    return (below[-1], above[0]) if below and above else ()


def told(table: BandTable, planned: Decimal) -> tuple[str, str, str]:
    """Return the change of power, the power, and what to know of it, for one table."""
    found = changes(table, planned)
    if not found:
        return "-", "-", _(table.edges)
    is_least = bool(table.word) and all(len(band.change) == 1 for band in found)
    change = _either(found, Decimal(0), _(table.word) if is_least else "")
    power = _either(found, planned, _("at most") if is_least else "")
    ends, edges = _ends(found), _(table.edges)
    if len(found) > 1:
        both = _("{ends} (an edge: both shown); {edges}").format(ends=ends, edges=edges)
        return change, power, both
    return change, power, f"{ends}; {edges}"


def _either(bands: tuple[Band, ...], start: Decimal, word: str) -> str:
    figures = [_(" to ").join(plain(start + each) for each in band.change) for band in bands]
    return f"{word} {_(' or ').join(dict.fromkeys(figures))} D".strip()


def _ends(bands: tuple[Band, ...]) -> str:
    return _(" and ").join(_("band {powers}").format(powers=_end(band)) for band in bands)


def _end(band: Band) -> str:
    low, high = plain(band.powers.low), plain(band.powers.high)
    mark = told_mark(band.mark.value)
    if low == LOWEST:
        return _("to {high} D ({mark})").format(high=high, mark=mark)
    if high == HIGHEST:
        return (_("above {low} D ({mark})") if band.above else _("from {low} D ({mark})")).format(
            low=low, mark=mark
        )
    return _("{low} to {high} D ({mark})").format(low=low, high=high, mark=mark)


def moved(sheet: Sheet, shift: Decimal) -> Decimal:
    """Work the power `Ps` that does at `ELP - s` what `P` does at `ELP`, for the aim `Rx`.

    Needs `W`, the vergence arriving at the bag, and `b`, from the bag to the retina, on the sheet.
    """
    sheet.take("s", shift)
    sheet.work("Ws", _("vergence arriving in the sulcus"), "1336 / (1336 / z - (ELP - s))", "D")
    return sheet.work("Ps", _("power in the sulcus"), "1336 / (b + s) - Ws", "D")


def left_in_sulcus(sheet: Sheet) -> Decimal:
    """Work the refraction `Rs` that a power `Pl` leaves at `ELP - s`."""
    sheet.work("u", _("vergence needed in front of it"), "1336 / (b + s) - Pl", "D")
    sheet.work("zs", _("vergence behind the cornea"), "1336 / (1336 / u + ELP - s)", "D")
    sheet.work("Rc", _("refraction at the cornea"), "zs - K", "D")
    return sheet.work("Rs", _("refraction at the spectacles"), "Rc / (1 + V * Rc / 1000)", "D")


def rows_of_bands(planned: Decimal) -> Iterator[tuple[str, str, str, str]]:
    """Yield a row for each published table."""
    for table in BANDS:
        change, power, edges = told(table, planned)
        yield table.name, change, power, edges
