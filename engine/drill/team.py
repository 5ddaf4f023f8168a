"""The first minute of a whole team: who has which task, and what a key of the timekeeper means.

Every task has exactly one owner among those who are in today, or there is no drill.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from string import ascii_lowercase

from chamberwise.engine.drill.entries import (
    Asked,
    Did,
    Entry,
    Milliseconds,
    ReadBack,
    Recognised,
    ReportedDone,
)
from chamberwise.engine.drill.fold import Drill
from chamberwise.engine.drill.following import can_be_done
from chamberwise.engine.drill.ladder import is_recognised
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.drill import DrillBook, Task
from chamberwise.engine.model.words import Duty

KEYS = "".join(each for each in ascii_lowercase if each not in "bq")
"""One key a task; `b` goes back and `q` leaves."""


class NobodyError(ValueError):
    """A task has no owner among those who are in today; `args[0]` names each."""


@dataclass(frozen=True, slots=True)
class Owned:
    """A task, its key, and who has it."""

    key: str
    task: Task
    owner: str


def owners(book: DrillBook, roles: Sequence[str]) -> tuple[Owned, ...]:
    """Return every task with its one owner. Raises `NobodyError` where one has none."""
    present = set(roles)
    found: list[Owned] = []
    nobody: list[str] = []
    for key, task in zip(KEYS, book.tasks, strict=False):
        owner = next((each for each in (task.who, *task.otherwise) if each in present), None)
        if owner is None:
            nobody.append(f"“{task.text}” ({task.who})")
        else:
            found.append(Owned(key, task, owner))
    if nobody:
        raise NobodyError(
            _("Nobody who is in today has: {nobody}.").format(nobody="; ".join(nobody))
        )
    return tuple(found)


def entries_of(drill: Drill, owned: Owned, at: Milliseconds) -> tuple[Entry, ...]:
    """Return what a press of a task's key means: a request is asked, read back, reported done.

    A task that is none is done at once. One more press of a task that is done means nothing.
    """
    task = owned.task
    asked, read, done = progress(drill, task)
    if done:
        return ()
    if task.is_request and not asked:
        return (Asked(at, task.id, asked_by(owned), owned.owner),)
    if task.is_request and not read:
        return (ReadBack(at, task.id, owned.owner),)
    found: list[Entry] = []
    if task.act == drill.scenario.book.announce and not is_recognised(drill):
        found.append(Recognised(at, task.text, owned.owner))
    if task.act is not None and can_be_done(drill.scenario, drill.standing, task.act):
        found.append(Did(at, task.act, owned.owner))
    return (*found, ReportedDone(at, task.id, owned.owner))


def progress(drill: Drill, task: Task) -> tuple[bool, bool, bool]:
    """Return whether a task was asked for, read back, and done.

    A task that is no request is done as well once somebody has done its act in words.
    """
    stands = [entry for _at, entry in drill.stands]
    asked, read, done = (
        any(isinstance(entry, kind) and entry.request == task.id for entry in stands)
        for kind in (Asked, ReadBack, ReportedDone)
    )
    acts = {entry.act for entry in stands if isinstance(entry, Did)}
    return asked, read, done or (not task.is_request and task.act in acts)


def asked_by(owned: Owned) -> str:
    """Return who asks for a task: the surgeon, or of the surgeon the assistant."""
    return "assistant" if owned.owner == "surgeon" else "surgeon"


def roles_in(book: DrillBook, duties: Sequence[Duty]) -> tuple[Duty, ...]:
    """Return the duties that a book gives tasks to, in the order of the vocabulary."""
    wanted = {duty for task in book.tasks for duty in (task.who, *task.otherwise)}
    return tuple(each for each in duties if each.id in wanted)


def left_open(drill: Drill, owned: Sequence[Owned]) -> tuple[Owned, ...]:
    """Return the tasks that are not done."""
    return tuple(each for each in owned if not progress(drill, each.task)[2])
