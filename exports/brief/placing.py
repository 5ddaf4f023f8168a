"""The brief on one page: people and what is to do above, one row a case below.

It is set in the largest type that one page holds.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.brief.content import (
    BY_HAND,
    NOT_SET,
    BackupLine,
    BriefContent,
    CaseLine,
)
from chamberwise.exports.control.frame import FOOT_SIZE, Frame
from chamberwise.exports.flow.block import Area, Block, Group, Laid, plain
from chamberwise.exports.flow.far import far
from chamberwise.exports.flow.filling import fill
from chamberwise.exports.flow.holding import unparted
from chamberwise.exports.flow.laying import lay
from chamberwise.exports.flow.tabling import Cell, row, shares
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Item, Page, Role, Run, Style, Tier, Weight
from chamberwise.exports.printing.unfit import UnfitError
from chamberwise.exports.typesetting.searching import most

PITCH = 1.25
REMARK = Style(FOOT_SIZE, ink=Ink.GREY, pitch=PITCH)
LEAST, MOST, STEP = 9.7, 18.0, 0.1
"""Points: 16 minutes of arc at 0.4 m; the same at 0.7 m, for a team around the page; between them.
"""
COLUMNS = (N_("Case, risk, ceiling, what to open"), N_("Lenses: exact power, and what is there"))
WIDTHS = (7.6, 11.0)
ROUNDED = 20
"""Letters by which a text of a few lines is longer on paper than it is: its last line is short."""
LINE = 0.06
"""Of the size in points: millimetres between lines of a cell, for the dots of a capital Ö."""
WAYS_OUT = (
    N_("Print on larger paper."),
    N_("Part the list, and brief each part."),
    N_("Leave lenses out of the shelf's file."),
)


@dataclass(frozen=True, slots=True)
class _Type:
    """How the words of a brief are set in type of a size."""

    size: float

    @property
    def title(self) -> Style:
        return Style(round(1.4 * self.size, 1), Weight.BOLD, pitch=PITCH)

    @property
    def head(self) -> Style:
        return Style(self.size, Weight.BOLD, pitch=PITCH)

    @property
    def label(self) -> Style:
        return Style(round(1.1 * self.size, 1), pitch=PITCH)

    @property
    def body(self) -> Style:
        return Style(self.size, pitch=PITCH)

    @property
    def gap(self) -> float:
        return LINE * self.size


def brief_pages(frame: Frame, brief: BriefContent) -> list[Page]:
    """Return the one page. Raises `UnfitError` where the list needs more than one."""
    steps = most(lambda tried: _fits(frame, brief, tried), 1, ceil((MOST - LEAST) / STEP))
    try:
        items = _placed(frame, brief, _type(max(steps, 0)))
    except UnfitError as error:
        why = _("{cases} cases and {tasks} things to do are more than one page.").format(
            cases=len(brief.cases), tasks=len(brief.to_do)
        )
        raise UnfitError(why, tuple(map(_, WAYS_OUT))) from error
    return [frame.page(items, 1, 1, far(items))]


def _type(steps: int) -> _Type:
    return _Type(round(min(LEAST + steps * STEP, MOST), 1))


def _fits(frame: Frame, brief: BriefContent, steps: int) -> bool:
    try:
        _placed(frame, brief, _type(steps))
    except UnfitError:
        return False
    return True


def _placed(frame: Frame, brief: BriefContent, type_: _Type) -> tuple[Item, ...]:
    body = frame.body
    area = Area(body.x, body.y, body.width, body.height)
    above, rows = _above(frame, brief, type_, area), _table(frame, brief, type_, area)
    (items,) = fill([*above, *rows, *_below(frame, brief, area)], [area])
    return items


def _above(frame: Frame, brief: BriefContent, type_: _Type, area: Area) -> list[Laid]:
    day = f", {brief.day}" if brief.day else ""
    title = Block(plain(f"{brief.title}{day}"), type_.title, Role.TITLE)
    people: list[Cell] = [
        (Block((Run(f"{what}: ", Weight.BOLD), Run(said, _weight(said))), type_.body),)
        for what, said in (*brief.people, (_("At least one rupture"), brief.chance))
    ]
    widths = shares(area.width, (1.2, 1.1, 0.9, 1))
    return [
        *lay(frame.ruler, [Group((title,), type_.gap)], area.width, area.height),
        row(frame.ruler, people, widths, area.height, ground=Ink.WASH),
        *_to_do(frame, brief.to_do, type_, area),
    ]


def _weight(said: str) -> Weight:
    return Weight.BOLD if said == _(NOT_SET) else Weight.REGULAR


def _to_do(frame: Frame, to_do: Sequence[str], type_: _Type, area: Area) -> list[Laid]:
    """Return what is to be done, in two columns, with a box to tick."""
    head = Block(plain(_("To do before the list starts")), type_.head, Role.HEADING)
    said = list(to_do) or [_("Nothing was found to be missing.")]
    half = _half(said)
    cells: list[Cell] = [_ticks(said[:half], (head,), type_), _ticks(said[half:], (), type_)]
    return [row(frame.ruler, cells, shares(area.width, (1, 1)), area.height)]


def _half(said: Sequence[str]) -> int:
    """Return after how many of them half of the words are told."""
    lengths = [len(each) + ROUNDED for each in said]
    told = [sum(lengths[: place + 1]) for place in range(len(said))]
    return next((place for place, each in enumerate(told, 1) if 2 * each >= told[-1]), len(said))


def _ticks(said: Sequence[str], head: Cell, type_: _Type) -> Cell:
    indent = 0.46 * type_.size
    ticked = (
        Block(plain(each), type_.body, indent=indent, lead="□", before=type_.gap) for each in said
    )
    return (*head, *ticked)


def _table(frame: Frame, brief: BriefContent, type_: _Type, area: Area) -> list[Laid]:
    widths = shares(area.width, WIDTHS)
    heads: list[Cell] = [(Block(plain(_(each)), type_.head, Role.HEADING),) for each in COLUMNS]
    rows = [row(frame.ruler, heads, widths, area.height, ground=Ink.WASH, keeps_next=True)]
    rows += [row(frame.ruler, _case(each, type_), widths, area.height) for each in brief.cases]
    return rows


def _case(case: CaseLine, type_: _Type) -> list[Cell]:
    about = f" {case.eye}{f', {case.anaesthesia}' if case.anaesthesia else ''}"
    label = Block((Run(case.label, Weight.BOLD), Run(about)), type_.label, Role.STEP, of=case.label)
    who = [
        (Run(_("Rupture ")), Run(case.risk, Weight.BOLD)),
        (Run(_("Ceiling: "), Weight.BOLD), Run(case.ceiling)),
    ]
    if case.ready:
        who.append((Run(_("Open: "), Weight.BOLD), Run("; ".join(case.ready))))
    lenses = [
        (Run(_("Planned "), Weight.BOLD), Run(case.planned)),
        *(_backup(each) for each in _worked(case)),
    ]
    return [(label, *_lines(who, type_)), _lines(lenses, type_)]


def _lines(said: Sequence[tuple[Run, ...]], type_: _Type) -> Cell:
    return tuple(Block(runs, type_.body, before=type_.gap) for runs in said)


def _worked(case: CaseLine) -> tuple[BackupLine, ...]:
    """Return the backups; where all are refused for one reason, the first says it for all."""
    refused = {each.refused for each in case.backups}
    return case.backups[:1] if len(refused) == 1 and "" not in refused else case.backups


def _backup(backup: BackupLine) -> tuple[Run, ...]:
    if backup.refused:
        return Run(_("Backup not worked: "), Weight.BOLD), Run(backup.refused)
    mark = _("MISSING, ") if backup.is_missing else ""
    where = Run(f"{mark}{backup.position} ", Weight.BOLD)
    beside = f" ({backup.beside})" if backup.beside else ""
    near = "; ".join(_near(*each) for each in backup.shelf) or _("none near")
    return where, Run(f"{backup.power}{beside}: {near}")


def _near(power: str, count: str, left: str) -> str:
    """Return a lens that is there, to stay on one line."""
    return unparted(f"{power} × {count}{f', {left}' if left else ''}")


def _below(frame: Frame, brief: BriefContent, area: Area) -> list[Laid]:
    models = dict.fromkeys(
        f"{each.position}: {each.lens}, {each.way}"
        for case in brief.cases
        for each in case.backups
        if not each.refused
    )
    told = (
        f"{'; '.join(models)}." if models else "",
        _("{by_hand} Not for consent.").format(by_hand=_(BY_HAND)),
        *brief.of_figures,
    )
    said = [each for each in told if each]
    blocks = [
        Block(plain(each), REMARK, Role.NOTE, before=LINE * FOOT_SIZE, tier=Tier.REFER)
        for each in said
    ]
    half = _half(said)
    cells: list[Cell] = [tuple(blocks[:half]), tuple(blocks[half:])]
    return [row(frame.ruler, cells, shares(area.width, (1, 1)), area.height)]
