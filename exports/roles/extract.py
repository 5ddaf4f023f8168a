"""From a pathway to a card for each duty that occurs in it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TypeAlias

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Line, Outcome, PathwayId, Step, StepId
from chamberwise.exports.roles.content import IN_THIS_ORDER, Part, RoleCard, Task
from chamberwise.exports.roles.opening import opening
from chamberwise.exports.script.headlines import headline, spoken
from chamberwise.exports.script.main_line import first_actions, main_line

Lines: TypeAlias = list[tuple[Step, Line]]


@dataclass(frozen=True, slots=True)
class _Pathway:
    library: Library
    own: Pathway
    first: tuple[Action, ...]


def role_cards(library: Library, name: PathwayId) -> tuple[RoleCard, ...]:
    """Return a card for each duty in the order of the vocabulary, then as they occur."""
    own = library.pathways[name]
    told = _Pathway(library, own, first_actions(own, main_line(own)))
    occurring = dict.fromkeys(line.who for _step, line in _lines(own))
    known = [duty for duty in library.words(name).duties if duty in occurring]
    return tuple(_card(told, duty) for duty in dict.fromkeys((*known, *occurring)))


def _card(told: _Pathway, duty: str) -> RoleCard:
    duties = told.library.words(told.own.id).duties
    stretches = opening(told.first)
    parts = [
        Part(title, tuple(_tasks(told, [(s, line) for s in steps for line in s.lines], duty)))
        for title, steps in stretches.items()
    ]
    later = [*_later(told, duty)]
    missing = tuple(dict.fromkeys(_missing(told, duty, first_alone=True)))
    done = {task for part in parts for task in part.tasks}
    return RoleCard(
        duties[duty].title if duty in duties else duty,
        told.own.title,
        _(IN_THIS_ORDER) not in stretches,
        tuple(part for part in parts if part.tasks),
        tuple(dict.fromkeys(_heard(told, duty))),
        missing,
        tuple(dict.fromkeys(_unset(told, duty))),
        tuple(dict.fromkeys(_own_words(told, duty, done))),
        tuple(each for each in dict.fromkeys(_missing(told, duty)) if each not in missing),
        tuple(later),
    )


def _lines(pathway: Pathway) -> Iterator[tuple[Step, Line]]:
    for step in pathway.steps.values():
        if isinstance(step, Action):
            yield from ((step, line) for line in step.lines)
        elif isinstance(step, Outcome):
            yield from ((step, line) for line in step.owed)


def _tasks(told: _Pathway, lines: Lines, duty: str) -> Iterator[Task]:
    for step, line in lines:
        if line.who == duty:
            yield Task(f"{told.own.id}/{step.id}", _text(line))


def _text(line: Line) -> str:
    said = spoken(line)
    return f"{line.when[:1].upper()}{line.when[1:]}: {said}" if line.when else said


def _later(told: _Pathway, duty: str) -> Iterator[Part]:
    """Yield what is done, not said, outside the first actions, by phase and step."""
    first = {step.id for step in told.first}
    for phase, title in told.own.phases.items():
        steps: dict[StepId, list[Line]] = {}
        for step, line in _lines(told.own):
            if step.phase == phase and line.who == duty and not line.said_aloud:
                steps.setdefault(step.id, []).append(line)
        tasks = [_later_task(told, *each) for each in steps.items() if each[0] not in first]
        if tasks:
            yield Part(title, tuple(tasks))


def _later_task(told: _Pathway, step: StepId, lines: list[Line]) -> Task:
    name = headline(told.library, told.own.steps[step])
    return Task(f"{told.own.id}/{step}", " ".join(_text(line) for line in lines), name)


def _own_words(told: _Pathway, duty: str, done: set[Task]) -> Iterator[str]:
    said = {task.text for task in done}
    for _step, line in _lines(told.own):
        if line.who == duty and line.said_aloud and _text(line) not in said:
            yield _text(line)


def _heard(told: _Pathway, duty: str) -> Iterator[str]:
    """Yield what another duty says in a first action before this one acts in it."""
    for step in told.first:
        acts = [place for place, line in enumerate(step.lines) if line.who == duty]
        for line in step.lines[: max(acts, default=0)]:
            if line.said_aloud and line.who != duty:
                yield line.text


def _missing(told: _Pathway, duty: str, *, first_alone: bool = False) -> Iterator[str]:
    kit = told.library.words(told.own.id).kit
    for step in _steps_with(told, duty):
        if step in told.first or not first_alone:
            yield from (kit[item].title if item in kit else item for item in step.needs)


def _unset(told: _Pathway, duty: str) -> Iterator[str]:
    findings = told.library.words(told.own.id).findings
    for step in _steps_with(told, duty):
        for name in step.choices:
            choice = findings[name].choice if name in findings else None
            if choice is None or choice.chosen is None:
                yield findings[name].title if name in findings else name


def _steps_with(told: _Pathway, duty: str) -> Iterator[Action]:
    """Yield the actions in which a duty acts."""
    for step in told.own.steps.values():
        if isinstance(step, Action) and any(line.who == duty for line in step.lines):
            yield step
