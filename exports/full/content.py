"""What the full pathway says on paper: numbers, words and ways, without places."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum


class Kind(StrEnum):
    """The five kinds of step."""

    QUESTION = "question"
    ACTION = "action"
    BRANCH = "branch"
    HANDOVER = "handover"
    OUTCOME = "outcome"


ON = "go on"
"""The way on from an action: its label is not printed where an arrow leads straight down."""


@dataclass(frozen=True, slots=True)
class Way:
    """One exit: its name in the file, what is printed on it, and the number it leads to."""

    id: str
    label: str
    to: int
    sign: str = ""


@dataclass(frozen=True, slots=True)
class Line:
    """Who does or says what; `when` is only said of what is owed."""

    who: str
    text: str
    is_said: bool = False
    when: str = ""
    sources: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Caution:
    """A harm and the right thing to do instead. It stands before the line `before`, from nought."""

    signal: str
    harm: str
    instead: str
    before: int = 0
    sources: tuple[int, ...] = ()

    @property
    def anywhere(self) -> Caution:
        """The same caution, wherever in a step it stands."""
        return replace(self, before=0)


@dataclass(frozen=True, slots=True)
class Choice:
    """A choice left to the unit, with what it has set or every position."""

    title: str
    is_set: bool
    positions: tuple[str, ...]
    number: int = 0
    """Its place in the list at the end, where it is not set."""


@dataclass(frozen=True, slots=True)
class Step:
    """One step; `of` names it as `pathway/step`."""

    of: str
    number: int
    kind: Kind
    phase: str
    heading: str
    lines: tuple[Line, ...] = ()
    cautions: tuple[Caution, ...] = ()
    needs: tuple[str, ...] = ()
    choices: tuple[Choice, ...] = ()
    target: str = ""
    note: str = ""
    why: str = ""
    ways: tuple[Way, ...] = ()
    sources: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Source:
    """A citation, its mark in words, and where it was read."""

    number: int
    cite: str
    mark: str
    where: str = ""


@dataclass(frozen=True, slots=True)
class Danger:
    """A danger told at the front, with the steps at which it is told again."""

    harm: str
    instead: str
    steps: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class FullPathway:
    """The whole document."""

    id: str
    title: str
    summary: str
    start: int
    dangers: tuple[Danger, ...]
    steps: tuple[Step, ...]
    sources: tuple[Source, ...]

    @property
    def open_choices(self) -> tuple[tuple[Choice, tuple[int, ...]], ...]:
        """Every choice that is not set, once, with the steps that ask for it."""
        where: dict[Choice, list[int]] = {}
        for step in self.steps:
            for choice in step.choices:
                if not choice.is_set:
                    where.setdefault(choice, []).append(step.number)
        return tuple((choice, tuple(at)) for choice, at in where.items())
