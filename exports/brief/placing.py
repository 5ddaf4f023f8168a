"""The brief on one page: people and what is to do above, one row a case below."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.exports.brief.content import (
    NOT_SET,
    BackupLine,
    BriefContent,
    CaseLine,
)
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.flow.block import Area, Block, Group, Laid, plain
from chamberwise.exports.flow.far import far
from chamberwise.exports.flow.filling import fill
from chamberwise.exports.flow.laying import lay
from chamberwise.exports.flow.tabling import Cell, row, shares
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Page, Role, Run, Style, Weight
from chamberwise.exports.printing.unfit import UnfitError

TITLE = Style(14, Weight.BOLD, pitch=1.25)
HEAD = Style(10, Weight.BOLD, pitch=1.25)
LABEL = Style(11)
BODY = Style(10, pitch=1.2)
REMARK = Style(9.2, ink=Ink.GREY, pitch=1.2)
COLUMNS = ("Case, risk, what to have open", "Lenses: exact power, and what is there", "Ceiling")
WIDTHS = (5.6, 10.4, 2.6)
ROUNDED = 20
"""Letters by which a text of a few lines is longer on paper than it is: its last line is short."""
LINE = 0.4
"""Millimetres between lines of a cell."""
WAYS_OUT = (
    "Print on larger paper.",
    "Part the list, and brief each part.",
    "Leave lenses out of the shelf's file.",
)


def brief_pages(frame: Frame, brief: BriefContent) -> list[Page]:
    """Return the one page. Raises `UnfitError` where the list needs more than one."""
    body = frame.body
    area = Area(body.x, body.y, body.width, body.height)
    laid = [*_above(frame, brief, area), *_table(frame, brief, area), *_below(frame, brief, area)]
    try:
        (items,) = fill(laid, [area])
    except UnfitError as error:
        why = (
            f"{len(brief.cases)} cases and {len(brief.to_do)} things to do are more than one page."
        )
        raise UnfitError(why, WAYS_OUT) from error
    return [frame.page(items, 1, 1, far(items))]


def _above(frame: Frame, brief: BriefContent, area: Area) -> list[Laid]:
    day = f", {brief.day}" if brief.day else ""
    title = Block(plain(f"{brief.title}{day}"), TITLE, Role.TITLE)
    people: list[Cell] = [
        (Block((Run(f"{what}: ", Weight.BOLD), Run(said, _weight(said))), BODY),)
        for what, said in (*brief.people, ("At least one rupture", brief.chance))
    ]
    widths = shares(area.width, (1.2, 1.1, 0.9, 1))
    return [
        *lay(frame.ruler, [Group((title,), LINE)], area.width, area.height),
        row(frame.ruler, people, widths, area.height, ground=Ink.WASH),
        *_to_do(frame, brief.to_do, area),
    ]


def _weight(said: str) -> Weight:
    return Weight.BOLD if said == NOT_SET else Weight.REGULAR


def _to_do(frame: Frame, to_do: Sequence[str], area: Area) -> list[Laid]:
    """Return what is to be done, in two columns, with a box to tick."""
    head = Block(plain("To do before the list starts"), HEAD, Role.HEADING)
    said = list(to_do) or ["Nothing was found to be missing."]
    half = _half(said)
    cells: list[Cell] = [_ticks(said[:half], (head,)), _ticks(said[half:], ())]
    return [row(frame.ruler, cells, shares(area.width, (1, 1)), area.height)]


def _half(said: Sequence[str]) -> int:
    """Return after how many of them half of the words are told."""
    lengths = [len(each) + ROUNDED for each in said]
    told = [sum(lengths[: place + 1]) for place in range(len(said))]
    return next((place for place, each in enumerate(told, 1) if 2 * each >= told[-1]), len(said))


def _ticks(said: Sequence[str], head: Cell) -> Cell:
    return (*head, *(Block(plain(each), BODY, indent=4.6, lead="□", before=LINE) for each in said))


def _table(frame: Frame, brief: BriefContent, area: Area) -> list[Laid]:
    widths = shares(area.width, WIDTHS)
    heads: list[Cell] = [(Block(plain(each), HEAD, Role.HEADING),) for each in COLUMNS]
    rows = [row(frame.ruler, heads, widths, area.height, ground=Ink.WASH, keeps_next=True)]
    rows += [row(frame.ruler, _case(each), widths, area.height) for each in brief.cases]
    return rows


def _case(case: CaseLine) -> list[Cell]:
    about = f" {case.eye}{f', {case.anaesthesia}' if case.anaesthesia else ''}"
    risk = (Run("Rupture "), Run(case.risk, Weight.BOLD))
    who = (
        Block((Run(case.label, Weight.BOLD), Run(about)), LABEL, Role.STEP, of=case.label),
        Block(risk, BODY),
        *(Block(plain(each), REMARK, Role.NOTE) for each in case.points[:1]),
        *_ready(case),
    )
    lenses = (
        Block((Run("Planned ", Weight.BOLD), Run(case.planned)), BODY),
        *(_backup(each) for each in _worked(case)),
    )
    return [who, lenses, (Block(plain(case.ceiling), BODY),)]


def _ready(case: CaseLine) -> Cell:
    if not case.ready:
        return ()
    said = (Run("Open: ", Weight.BOLD), Run("; ".join(case.ready)))
    return (Block(said, BODY),)


def _worked(case: CaseLine) -> tuple[BackupLine, ...]:
    """Return the backups; where all are refused for one reason, the first says it for all."""
    refused = {each.refused for each in case.backups}
    return case.backups[:1] if len(refused) == 1 and "" not in refused else case.backups


def _backup(backup: BackupLine) -> Block:
    if backup.refused:
        said = (Run("Backup not worked: ", Weight.BOLD), Run(backup.refused))
        return Block(said, BODY, before=LINE)
    mark = "MISSING, " if backup.is_missing else ""
    where = Run(f"{mark}{backup.position} ", Weight.BOLD)
    beside = f" ({backup.beside})" if backup.beside else ""
    near = "; ".join(_near(*each) for each in backup.shelf) or "none near"
    return Block((where, Run(f"{backup.power}{beside}: {near}")), BODY, before=LINE)


def _near(power: str, count: str, left: str) -> str:
    return f"{power} × {count}{f', {left}' if left else ''}"


def _below(frame: Frame, brief: BriefContent, area: Area) -> list[Laid]:
    models = dict.fromkeys(
        f"{each.position}: {each.lens}, {each.way}"
        for case in brief.cases
        for each in case.backups
        if not each.refused
    )
    said = (f"{'; '.join(models)}." if models else "", *brief.remarks)
    blocks = [Block(plain(each), REMARK, Role.NOTE, before=LINE) for each in said if each]
    half = _half([each for each in said if each])
    cells: list[Cell] = [tuple(blocks[:half]), tuple(blocks[half:])]
    return [row(frame.ruler, cells, shares(area.width, (1, 1)), area.height)]
