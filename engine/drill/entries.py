"""The entries of a drill's journal. Entries are only ever added; the run is what they fold to.

`at` is in milliseconds since the drill began, by a clock that never goes back.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import IntEnum, StrEnum
from typing import TypeAlias

from chamberwise.engine.model.words import ActId, FindingId, ValueId

Milliseconds: TypeAlias = int


class Mode(StrEnum):
    """In a rehearsal one may go back and try again; only runs count."""

    REHEARSE = "rehearse"
    RUN = "run"


class Level(IntEnum):
    """How much help there was before something was done. From `MENU` on it is recognised only."""

    RECALLED = 0
    NUDGED = 1
    MENU = 2
    TOLD = 3


class Certainty(IntEnum):
    """How sure somebody was, where it was marked."""

    GUESS = 1
    LIKELY = 2
    SURE = 3


class Ending(StrEnum):
    """How a drill ended."""

    OUTCOME = "outcome reached"
    STOP_RULE = "stop rule"
    TIME_OUT = "time out"
    GIVEN_UP = "given up"
    INTERRUPTED = "interrupted"


@dataclass(frozen=True, slots=True)
class Began:
    """The drill began. `digest` is that of the pathway's content; `roles`, never names."""

    on: datetime
    scenario: str
    seed: int
    pathway: str
    edition: str
    digest: str
    mode: Mode
    roles: tuple[str, ...] = ()
    at: Milliseconds = 0


@dataclass(frozen=True, slots=True)
class Cued:
    """Something could be perceived: the number of a cue of the scenario, or what an act led to."""

    at: Milliseconds
    text: str
    is_first: bool = False
    """Whether recognition is timed from here."""


@dataclass(frozen=True, slots=True)
class Recognised:
    """The trigger was said aloud in whatever words: somebody knows what this is."""

    at: Milliseconds
    typed: str
    who: str
    level: Level = Level.RECALLED
    certainty: Certainty | None = None
    first_key: Milliseconds | None = None


@dataclass(frozen=True, slots=True)
class Wondered:
    """Somebody asked whether this is it: not said, so that nobody has been told yet."""

    at: Milliseconds
    typed: str
    who: str


@dataclass(frozen=True, slots=True)
class Did:
    """An act was done, right or wrong. `typed` are the words it was taken from."""

    at: Milliseconds
    act: ActId
    who: str
    typed: str = ""
    level: Level = Level.RECALLED
    certainty: Certainty | None = None
    first_key: Milliseconds | None = None


@dataclass(frozen=True, slots=True)
class Looked:
    """A finding was looked for, and the sign of `saw` was shown; None where it cannot be told."""

    at: Milliseconds
    finding: FindingId
    saw: ValueId | None
    who: str
    typed: str = ""
    level: Level = Level.RECALLED
    certainty: Certainty | None = None
    first_key: Milliseconds | None = None


@dataclass(frozen=True, slots=True)
class Helped:
    """Help was asked for, or came by itself."""

    at: Milliseconds
    level: Level


@dataclass(frozen=True, slots=True)
class NotUnderstood:
    """Words that no act or answer was found for; kept for whoever looks after the synonyms."""

    at: Milliseconds
    typed: str


@dataclass(frozen=True, slots=True)
class Injected:
    """Something happened that the scenario had in store."""

    at: Milliseconds
    inject: str


@dataclass(frozen=True, slots=True)
class Asked:
    """A request was made aloud of a duty, for the closing of the loop."""

    at: Milliseconds
    request: str
    who: str
    of: str


@dataclass(frozen=True, slots=True)
class ReadBack:
    """A request was read back."""

    at: Milliseconds
    request: str
    who: str


@dataclass(frozen=True, slots=True)
class ReportedDone:
    """A request was reported done: the loop is closed."""

    at: Milliseconds
    request: str
    who: str


@dataclass(frozen=True, slots=True)
class Rewound:
    """Back to just before the entry of that number (from 0); what came after stays as a branch."""

    at: Milliseconds
    to: int


@dataclass(frozen=True, slots=True)
class Resumed:
    """The drill was taken up again after an interruption; its times say nothing any more."""

    at: Milliseconds
    on: datetime


@dataclass(frozen=True, slots=True)
class Ended:
    """The drill ended."""

    at: Milliseconds
    how: Ending


Entry: TypeAlias = (
    Began
    | Cued
    | Recognised
    | Wondered
    | Did
    | Looked
    | Helped
    | NotUnderstood
    | Injected
    | Asked
    | ReadBack
    | ReportedDone
    | Rewound
    | Resumed
    | Ended
)
