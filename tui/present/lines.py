"""What an action asks of each person, in order, and what must be to hand."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby

from chamberwise.engine.model.step import Action, Handover
from chamberwise.engine.model.words import KitItem
from chamberwise.engine.walk.walk import Walk
from chamberwise.exports.record.naming import READER, duty_title


@dataclass(frozen=True, slots=True)
class Instruction:
    """One instruction: done, or said aloud."""

    text: str
    said_aloud: bool


@dataclass(frozen=True, slots=True)
class DutyView:
    """What one person does and says before the next person's turn."""

    who: str
    instructions: tuple[Instruction, ...]


def duties(walk: Walk) -> tuple[DutyView, ...]:
    """Return the lines of an action, neighbours of one duty together; the order is kept."""
    step = walk.step
    if isinstance(step, Handover) and step.says:
        return (DutyView(READER, (Instruction(step.says, said_aloud=True),)),)
    if not isinstance(step, Action):
        return ()
    words = walk.library.words(walk.state.place.pathway)
    return tuple(
        DutyView(
            duty_title(words, who), tuple(Instruction(line.text, line.said_aloud) for line in lines)
        )
        for who, lines in groupby(step.lines, key=lambda line: line.who)
    )


def kit(walk: Walk) -> tuple[str, ...]:
    """Return what an action needs to hand."""
    step = walk.step
    if not isinstance(step, Action):
        return ()
    items = walk.library.words(walk.state.place.pathway).kit
    return tuple(_kit(items[name]) if name in items else name for name in step.needs)


def _kit(item: KitItem) -> str:
    return f"{item.title} ({item.amount})" if item.amount else item.title
