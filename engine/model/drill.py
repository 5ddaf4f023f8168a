"""What a drill is made of: what acts do to the truth, and a book of scenarios over one pathway."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TypeAlias

from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.rule import ANYTHING
from chamberwise.engine.model.step import PathwayId, StepId
from chamberwise.engine.model.words import Act, ActId, FindingId, SourceId, ValueId

Weights: TypeAlias = tuple[tuple[ValueId, int], ...]
Settings: TypeAlias = tuple[tuple[FindingId, ValueId], ...]
CERTAIN = 100


@dataclass(frozen=True, slots=True)
class Turn:
    """One thing an act does to what is true. With a lesson it is what a wrong act leads to.

    `unless_done` are acts that forestall it, `once_done` acts it needs, done after the last of
    `since`.
    """

    becomes: Settings = ()
    when: Condition = ANYTHING
    unless: Condition = ANYTHING
    unless_done: tuple[ActId, ...] = ()
    once_done: tuple[ActId, ...] = ()
    since: tuple[ActId, ...] = ()
    percent: int = CERTAIN
    shows: str = ""
    lesson: str = ""
    sources: tuple[SourceId, ...] = ()


@dataclass(frozen=True, slots=True)
class InTruth:
    """What an act does to the truth, and while what it can be done at all."""

    turns: tuple[Turn, ...] = ()
    only_while: Condition = ANYTHING
    otherwise: str = ""
    """What is seen when somebody tries it and it cannot be done."""


@dataclass(frozen=True, slots=True)
class Harm:
    """Why an act is never right, and what is right instead."""

    why: str
    instead: str
    counts_as: ActId | None = None
    """The act that safety rules take it for."""
    sources: tuple[SourceId, ...] = ()


@dataclass(frozen=True, slots=True)
class Seen:
    """How a value looks while something is true, and where none of some acts was done."""

    shows: str
    when: Condition = ANYTHING
    unless_done: tuple[ActId, ...] = ()


@dataclass(frozen=True, slots=True)
class TruthBook:
    """What acts do to the truth. `acts` are those that no pathway asks for."""

    acts: Mapping[ActId, Act] = field(default_factory=dict)
    harms: Mapping[ActId, Harm] = field(default_factory=dict)
    in_truth: Mapping[ActId, InTruth] = field(default_factory=dict)
    seen_as: Mapping[tuple[FindingId, ValueId], tuple[Seen, ...]] = field(default_factory=dict)
    """By value of a finding, how it looks where its sign would not fit; the first that holds."""


@dataclass(frozen=True, slots=True)
class Phrases:
    """How people say things: acts, looks, words that stand for others, and words much alike."""

    acts: Mapping[ActId, tuple[str, ...]] = field(default_factory=dict)
    looks: Mapping[FindingId, tuple[str, ...]] = field(default_factory=dict)
    words: Mapping[str, str] = field(default_factory=dict)
    like: tuple[str, ...] = ()
    """Each holds words that often mean the same, with blanks between them."""


@dataclass(frozen=True, slots=True)
class Reply:
    """What answers an inject, and what that changes."""

    act: ActId
    title: str = ""
    becomes: Settings = ()
    shows: str = ""
    said_as: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Inject:
    """Something that happens: seconds after the first cue, or after an act, while `when`."""

    id: str
    title: str
    shows: str
    at: int | None = None
    after: ActId | None = None
    when: Condition = ANYTHING
    becomes: Settings = ()
    replies: tuple[Reply, ...] = ()


@dataclass(frozen=True, slots=True)
class Opening:
    """One stage at which it happens: how often, what is known, what may be true, what is seen."""

    id: str
    weight: int
    so_far: str
    cues: tuple[str, ...]
    known: Settings = ()
    truth: tuple[tuple[FindingId, Weights], ...] = ()
    sources: tuple[SourceId, ...] = ()
    calls: tuple[tuple[ActId, str], ...] = ()
    """By act, what it is called at this stage, where its usual title would not fit."""


@dataclass(frozen=True, slots=True)
class Task:
    """What somebody does within so many seconds; `otherwise` names who does it where nobody is.

    `is_request` marks what is asked of somebody, read back and reported done.
    """

    id: str
    within: int
    who: str
    text: str
    otherwise: tuple[str, ...] = ()
    act: ActId | None = None
    is_request: bool = False


@dataclass(frozen=True, slots=True)
class CriticalAct:
    """An act that must not be left out, and by when.

    `soft` and `hard` are seconds after the first cue, or after `once` was done where an act is
    named; None where time does not matter. They are local targets, never a benchmark.
    """

    act: ActId
    soft: int | None = None
    hard: int | None = None
    once: ActId | None = None
    why: str = ""
    sources: tuple[SourceId, ...] = ()


@dataclass(frozen=True, slots=True)
class Order:
    """`first` belongs before `then`; an order that is kept or broken, never scored by distance."""

    first: ActId
    then: ActId
    is_hard: bool = True
    """Whether breaking it may harm; a soft order is remarked on alone."""


@dataclass(frozen=True, slots=True)
class Authored:
    """A scenario written by hand. What it leaves open is drawn as in any other."""

    id: str
    title: str
    opening: str
    brief: tuple[str, ...] = ()
    so_far: str = ""
    truth: Settings = ()
    cues: tuple[str, ...] = ()
    decoys: tuple[str, ...] | None = None
    injects: tuple[str, ...] | None = None
    begins_at: StepId | None = None
    ends_at: tuple[StepId, ...] = ()
    lasts: int | None = None


@dataclass(frozen=True, slots=True)
class DrillBook:
    """Every scenario of one pathway: what they are drawn from, and what matters in them."""

    pathway: PathwayId
    triggers: tuple[str, ...]
    announce: ActId
    what_it_is: str
    could_be: tuple[str, ...]
    """What it might be taken for: offered beside it when somebody asks for help."""
    lasts: int
    ends_at: tuple[StepId, ...]
    brief: Mapping[str, tuple[str, ...]]
    """By what it tells of: what one is drawn from."""
    truth: tuple[tuple[FindingId, Weights], ...]
    at_a_glance: tuple[FindingId, ...]
    unseen: tuple[tuple[Condition, tuple[FindingId, ...]], ...]
    openings: tuple[Opening, ...]
    decoys: tuple[str, ...]
    injects: tuple[Inject, ...]
    critical: tuple[CriticalAct, ...]
    orders: tuple[Order, ...]
    tasks: tuple[Task, ...]
    reader: tuple[str, ...]
    scenarios: tuple[Authored, ...]
