"""The five kinds of step."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from typing import TypeAlias

from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.words import NO_EFFECTS, ActId, Effects, FindingId, SourceId, ValueId

StepId: TypeAlias = str
PathwayId: TypeAlias = str

CANNOT_TELL = "cannot tell"


class SignalWord(StrEnum):
    """Signal words as ISO 3864 and ANSI Z535 use them, most severe first."""

    DANGER = "danger"
    WARNING = "warning"
    CAUTION = "caution"
    NOTICE = "notice"


@dataclass(frozen=True, slots=True)
class Caution:
    """A harm and, paired with it, the right thing to do. `guards` names an act, or its own step."""

    signal: SignalWord
    harm: str
    instead: str
    guards: ActId | None = None
    sources: tuple[SourceId, ...] = ()


@dataclass(frozen=True, slots=True)
class Bound:
    """How often a step may be entered, and where a walk goes instead after that."""

    at_most: int
    after_that: StepId


@dataclass(frozen=True, slots=True)
class Answer:
    """One answer: the values it stands for (none for "cannot tell") and where it leads."""

    id: str
    means: tuple[ValueId, ...]
    go_to: StepId
    label: str = ""


@dataclass(frozen=True, slots=True)
class Line:
    """One duty, one instruction: something done or said aloud, with the act that rules speak of."""

    who: str
    text: str
    said_aloud: bool = False
    act: ActId | None = None
    when: str = ""
    sources: tuple[SourceId, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Step:
    id: StepId
    phase: str
    why: str = ""
    short: str = ""
    sources: tuple[SourceId, ...] = ()
    cautions: tuple[Caution, ...] = ()
    bound: Bound | None = None
    plan: tuple[tuple[str, str], ...] = ()
    work: tuple[str, ...] = ()
    """Calculations that are worked here, by name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Question(_Step):
    """Asks one finding."""

    ask: FindingId
    question: str
    answers: tuple[Answer, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Action(_Step):
    """Something is done. `time_target` is local, in seconds, never a benchmark."""

    lines: tuple[Line, ...]
    go_to: StepId
    needs: tuple[str, ...] = ()
    choices: tuple[FindingId, ...] = ()
    time_target: int | None = None
    effects: Effects = NO_EFFECTS


@dataclass(frozen=True, slots=True)
class Row:
    """One row of a branch."""

    when: Condition
    go_to: StepId


@dataclass(frozen=True, slots=True, kw_only=True)
class Branch(_Step):
    """Goes on silently by what is known."""

    rows: tuple[Row, ...]
    otherwise: StepId | None = None
    not_known: StepId | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Handover(_Step):
    """Goes on in another pathway; `on_return` names, by its outcome, the step to come back to."""

    to: PathwayId
    says: str
    on_return: tuple[tuple[StepId, StepId], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome(_Step):
    """The end, with what is owed afterwards."""

    title: str
    owed: tuple[Line, ...] = field(default=())


Step: TypeAlias = Question | Action | Branch | Handover | Outcome
