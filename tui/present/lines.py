"""What an action asks of each person, in order, and what must be to hand."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.local import Local
from chamberwise.engine.model.step import Action, Handover, Line
from chamberwise.engine.model.words import KitItem
from chamberwise.engine.walk.walk import Walk
from chamberwise.exports.control.extract import phone_told, place_told
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
        return (DutyView(_(READER), (Instruction(step.says, said_aloud=True),)),)
    if not isinstance(step, Action):
        return ()
    pathway = walk.state.place.pathway
    words, local = walk.library.words(pathway), walk.library.local_to(pathway)
    return tuple(
        DutyView(duty_title(words, who), tuple(_instruction(line, local) for line in lines))
        for who, lines in groupby(step.lines, key=lambda line: line.who)
    )


def _instruction(line: Line, local: Local | None) -> Instruction:
    """Return an instruction; beside a call for help stands how the unit makes it."""
    number = phone_told(local, line.act) if line.act and not line.said_aloud else ""
    return Instruction(f"{line.text} ({number})" if number else line.text, line.said_aloud)


def kit(walk: Walk) -> tuple[str, ...]:
    """Return what an action needs to hand."""
    step = walk.step
    if not isinstance(step, Action):
        return ()
    pathway = walk.state.place.pathway
    items, local = walk.library.words(pathway).kit, walk.library.local_to(pathway)
    return tuple(_kit(items[name], local) if name in items else name for name in step.needs)


def _kit(item: KitItem, local: Local | None) -> str:
    """Return an item, with what the unit uses for it and where that lies."""
    told = f"{item.title} ({item.amount})" if item.amount else item.title
    own = local.products.get(item.id) if local else None
    return f"{told}: {own.product}; {place_told(local, item.id)}" if own else told
