"""The texts of a script and how they are set: 14 points or more."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.flow.block import Block, Group, Panel, plain
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Role, Run, Style, Tier, Weight
from chamberwise.exports.script.content import STANDING, Mark, Script, ScriptLine, ScriptStep

TITLE = Style(20, Weight.BOLD, pitch=1.25)
STEP = Style(15, Weight.BOLD)
BODY = Style(14)
ANSWER = Style(14, Weight.MEDIUM)
REMARK = Style(10.5, ink=Ink.GREY)
INDENT = 14.0
DEEPER = 6.0
ROLES = {Mark.ASK: Role.QUESTION, Mark.ANSWER: Role.ANSWER}


def head(script: Script) -> Group:
    """Return the title, when the script is taken in hand, and how it is read."""
    return Group(
        (
            Block(
                plain(_("Reader's script: {title}").format(title=script.title)), TITLE, Role.TITLE
            ),
            Block(plain(script.trigger), BODY, before=1.0),
            *(Block(plain(_(each)), REMARK, Role.NOTE, before=1.0) for each in STANDING),
        ),
        3.0,
    )


def step_groups(step: ScriptStep) -> list[Group]:
    """Return a step: its headline with its first words, then line by line."""
    band = Panel(Ink.WASH, Ink.WASH, 0, 1.2)
    mark = (Run(f"{Mark.ASK.told}\u2002"),) if step.is_asked else ()
    runs = (*mark, Run("\n".join(step.headline)))
    role = Role.QUESTION if step.is_asked else Role.STEP
    name = Block(runs, STEP, role, step.of, INDENT - 1.2, lead=str(step.number))
    lines = [Group(tuple(_line(each)), 1.8, _keeps(each)) for each in step.lines]
    return [Group((name,), 1.8, keeps_next=bool(lines), panel=band), *_closed(lines)]


def _closed(lines: list[Group]) -> list[Group]:
    """Return the lines with more room after the last."""
    if not lines:
        return []
    *others, last = lines
    return [*others, Group(last.blocks, 4.5)]


def _line(line: ScriptLine) -> Iterator[Block]:
    indent = INDENT + line.deep * DEEPER
    role = ROLES.get(line.mark, Role.LINE)
    first, *rest = line.breaths or ("",)
    yield Block(_first(line.mark, first), BODY, role, line.of, indent, tier=Tier.ACT)
    for each in rest:
        style = ANSWER if line.mark is Mark.ANSWER else BODY
        yield Block(plain(each), style, role, "", indent + DEEPER, before=1.3)


def _keeps(line: ScriptLine) -> bool:
    """Whether the next line is part of this one: an answer and where it leads."""
    return line.mark in (Mark.ANSWER, Mark.HEAR, Mark.THEN) or (
        line.mark is Mark.SAY and line.deep > 0
    )


def _first(mark: Mark, words: str) -> tuple[Run, ...]:
    """Return the first breath behind its mark; what is simply read out has none."""
    if mark is Mark.SAY:
        return plain(words)
    if mark is Mark.ANSWER:
        return (Run(f"•\u2002{words}", Weight.MEDIUM),)
    return (Run(mark.told, Weight.BOLD), Run(f"\u2002{words}" if words else ""))
