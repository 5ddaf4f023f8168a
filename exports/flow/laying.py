"""Blocks to placed items: how high each group is in a width, and where its parts stand."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.flow.block import Block, Group, Laid, Panel
from chamberwise.exports.flow.holding import held_run
from chamberwise.exports.legibility.line import widest
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import (
    Align,
    Arrow,
    Item,
    Outline,
    Role,
    Run,
    Shape,
    Text,
)
from chamberwise.exports.printing.unfit import UnfitError
from chamberwise.exports.typesetting.measuring import Ruler, Setting

_WAYS_OUT = (N_("Print on larger paper."), N_("Shorten the words."), N_("Print the full pathway."))
LEAST_LINE = 18.0
"""Millimetres that are left to write on."""
WRITE_HEIGHT = 7.0


def ways_out() -> tuple[str, ...]:
    """Return what helps where words do not fit."""
    return tuple(map(_, _WAYS_OUT))


def lay(ruler: Ruler, groups: Sequence[Group], width: float, most: float) -> list[Laid]:
    """Return each group in a width; one higher than `most` is broken between its blocks.

    Raises `UnfitError` where a word is wider than its column or a block higher than `most`.
    """
    kept = [_held(group) for group in groups]
    ruler.measure(_settings(kept, width))
    return [each for group in kept for each in _laid(ruler, group, width, most)]


def measure(ruler: Ruler, groups: Iterable[tuple[Group, float]]) -> None:
    """Measure, in one go, groups that are laid one after the other, each in its width."""
    ruler.measure(each for group, width in groups for each in _settings([_held(group)], width))


def _held(group: Group) -> Group:
    """Return a group whose quantities no line end parts."""
    blocks = (replace(block, runs=tuple(map(held_run, block.runs))) for block in group.blocks)
    return replace(group, blocks=tuple(blocks))


def beside(left: Laid, right: Laid, at: float) -> Laid:
    """Return two side by side, the right one so far in, as high as the higher."""
    items = (*left.items, *(moved(item, at, 0) for item in right.items))
    return Laid(items, max(left.height, right.height), max(left.after, right.after))


def under(above: Laid, below: Laid) -> Laid:
    """Return two as one, the second under the first with the gap that the first asks for."""
    down = above.height + above.after
    items = (*above.items, *(moved(item, 0, down) for item in below.items))
    return Laid(items, down + below.height, below.after, below.keeps_next)


def _settings(groups: Iterable[Group], width: float) -> Iterable[Setting]:
    for group in groups:
        for block in group.blocks:
            yield _setting(block, _inner(group.panel, width))
            if block.lead:
                yield _lead(block)


def _inner(panel: Panel | None, width: float) -> float:
    return width - 2 * panel.padding if panel else width


def _setting(block: Block, width: float) -> Setting:
    """Return a block's words in their column, or in the part of it that lines should fill."""
    inner = width - block.indent
    is_left = block.style.align is Align.LEFT
    return Setting(
        block.runs, block.style, min(inner, widest(block.style.size)) if is_left else inner
    )


def _fitting(ruler: Ruler, block: Block, width: float) -> Setting:
    """Return the same; where one word needs it, in the whole column."""
    setting = _setting(block, width)
    if ruler(setting).longest > setting.width:
        return setting._replace(width=width - block.indent)
    return setting


def _lead(block: Block) -> Setting:
    return Setting((Run(block.lead),), block.style, block.indent)


def _laid(ruler: Ruler, group: Group, width: float, most: float) -> Iterable[Laid]:
    inner = _inner(group.panel, width)
    padding = group.panel.padding if group.panel else 0.0
    part: list[Block] = []
    high = 2 * padding
    for block in group.blocks:
        own = _height(ruler, block, inner)
        if own + 2 * padding > most:
            raise UnfitError(
                _("“{text}” is higher than its column.").format(text=_text(block)), ways_out()
            )
        if part and high + block.before + own > most:
            yield _placed(ruler, Group(tuple(part), group.after, panel=group.panel), width)
            part, high = [], 2 * padding
        high += own + (block.before if part else 0.0)
        part.append(block)
    yield _placed(ruler, replace(group, blocks=tuple(part)), width)


def _height(ruler: Ruler, block: Block, width: float) -> float:
    room = ruler(_fitting(ruler, block, width))
    if room.longest > width - block.indent + 0.01:
        raise UnfitError(
            _("A word of “{text}” is wider than its column.").format(text=_text(block)), ways_out()
        )
    return room.height + (WRITE_HEIGHT if _writes_below(ruler, block, width) else 0.0)


def _writes_below(ruler: Ruler, block: Block, width: float) -> bool:
    """Whether no room is left to write on behind the words, but only below them."""
    behind = width - block.indent - ruler(_setting(block, width)).width - 2
    return block.to_write and behind < LEAST_LINE


def _text(block: Block) -> str:
    return "".join(run.text for run in block.runs)


def _placed(ruler: Ruler, group: Group, width: float) -> Laid:
    panel = group.panel
    padding = panel.padding if panel else 0.0
    inner = _inner(panel, width)
    items: list[Item] = []
    y = padding
    for place, block in enumerate(group.blocks):
        y += block.before if place else 0.0
        high = _height(ruler, block, inner)
        items += _of_block(ruler, block, inner, padding, y, high)
        y += high
    high = y + padding
    if panel:
        box = (0.0, 0.0, width, high, panel.border, panel.ground, panel.weight)
        items.insert(0, Shape(Outline.PANEL, *box))
    return Laid(tuple(items), high, group.after, group.keeps_next)


def _of_block(
    ruler: Ruler, block: Block, width: float, x: float, y: float, high: float
) -> Iterable[Item]:
    if block.lead:
        room = ruler(_lead(block)).height
        lead = (Run(block.lead),)
        yield Text(x, y, block.indent, room, lead, block.style, Role.NUMBER, block.tier)
    left, inner = x + block.indent, width - block.indent
    words = _fitting(ruler, block, width)
    room = ruler(words).height
    yield Text(
        left, y, words.width, room, block.runs, block.style, block.role, block.tier, block.of
    )
    if block.to_write:
        below = _writes_below(ruler, block, width)
        start = left if below else left + ruler(_setting(block, width)).width + 2
        line = ((start, y + high - 0.6), (left + inner, y + high - 0.6))
        yield Arrow(line, 0.25, Ink.RULE, has_head=False)
