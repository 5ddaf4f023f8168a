"""The texts of a role card and how they are set."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import count

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.flow.block import Block, Group, Panel, plain
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Role, Run, Style, Weight
from chamberwise.exports.roles.content import NO_TIMES, TIMES, RoleCard, Task

DUTY = Style(15, Weight.BOLD, pitch=1.25)
HEAD = Style(11, Weight.BOLD)
FIRST = Style(11)
BODY = Style(10)
REMARK = Style(9.2, ink=Ink.GREY)
INDENT = 5.0
LATER = N_("From here on: only where the pathway comes to that step.")
MISSING = N_("If missing, say “Missing” and name it")
NOT_SET = N_("When it comes up, say “Not set here” and name it")


def head(card: RoleCard, number: int, of: int) -> Group:
    """Return whose card it is, of what, and which of several."""
    which = _("{pathway}, card {number} of {of}") if of > 1 else "{pathway}"
    told = which.format(pathway=card.pathway, number=number, of=of)
    duty = Block(plain(card.duty), DUTY, Role.TITLE)
    return Group((duty, Block(plain(told), REMARK, Role.NOTE, before=0.6)), 2.4)


def groups(card: RoleCard) -> list[Group]:
    """Return all that stands on the card, the first minute first."""
    return [
        *_opening(card),
        *_listed(_("Read back when you hear"), (f"“{each}”" for each in card.heard)),
        *_listed(_(MISSING), iter(card.missing)),
        *_listed(_("Own words, later"), iter(card.words)),
        *_later(card),
        *_listed(
            _("Later: if missing, say “Missing” and name it"),
            iter(card.missing_later),
        ),
        *_listed(_(NOT_SET), iter(card.unset)),
    ]


def _opening(card: RoleCard) -> Iterator[Group]:
    if not card.opening:
        yield _remark(_("Nothing of its own in the first actions: stand by, listen, read back."))
        return
    numbers = count(1)
    for part in card.opening:
        yield _heading(part.title)
        yield from (_task(next(numbers), task, FIRST) for task in part.tasks)
    yield _remark(_(TIMES) if card.has_times else _(NO_TIMES))


def _later(card: RoleCard) -> Iterator[Group]:
    """Yield what comes later, step by step; only some of it comes up on any one walk."""
    if card.later:
        yield _remark(_(LATER))
    for part in card.later:
        yield _heading(part.title)
        for task in part.tasks:
            runs = (Run(f"{task.step}: ", Weight.MEDIUM), Run(task.text))
            block = Block(runs, BODY, Role.STEP, task.of, indent=INDENT + 1, lead="•")
            yield Group((block,), 1.2)


def _task(number: int, task: Task, style: Style) -> Group:
    block = Block(plain(task.text), style, Role.STEP, task.of, indent=INDENT + 1, lead=f"{number}")
    return Group((block,), 1.2)


def _listed(title: str, texts: Iterator[str]) -> Iterator[Group]:
    said = [*texts]
    if said:
        yield _heading(title)
        yield from (
            Group((Block(plain(each), BODY, indent=INDENT + 1, lead="•"),), 1.2) for each in said
        )


def _heading(text: str) -> Group:
    band = Panel(Ink.WASH, Ink.WASH, 0, 0.9)
    return Group((Block((Run(text),), HEAD, Role.HEADING),), 1.4, keeps_next=True, panel=band)


def _remark(text: str) -> Group:
    return Group((Block(plain(text), REMARK, Role.NOTE),), 1.8)
