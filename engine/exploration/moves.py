"""Answers, actions and conditions as masks over the bits of knowledge."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import TypeAlias

from chamberwise.engine.meaning.layout import Field, Layout
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.step import Action, Answer, Line, PathwayId, Question
from chamberwise.engine.model.words import Effects, Words

Terms = tuple[tuple[int, int], ...]

Tracked: TypeAlias = Mapping[int, int]
"""By the bits of a field, the bit that is set while it is stale."""

NOTHING: Tracked = {}


def answer_masks(question: Question, field: Field) -> Iterator[tuple[Answer, int]]:
    """Yield every answer with the bits it leaves possible; none for "cannot tell"."""
    for answer in question.answers:
        yield answer, field.mask(answer.means)


@dataclass(frozen=True, slots=True)
class Effect:
    """What acts do to bits: `bits & keep | add`, and where a tracked field gives up what it knew,

    `if_narrowed` has the field's bits and the bit that says so.
    """

    keep: int = -1
    add: int = 0
    if_narrowed: tuple[tuple[int, int], ...] = ()

    def __call__(self, bits: int) -> int:
        """Return the bits afterwards."""
        after = bits & self.keep | self.add
        for every, bit in self.if_narrowed:
            if bits & every != every:
                after |= bit
        return after

    def reads(self, wanted: int) -> int:
        """Return the bits beforehand on which some bits afterwards hang."""
        before = wanted & self.keep & ~self.add
        for every, bit in self.if_narrowed:
            if bit & wanted:
                before |= every
        return before


def action_effect(
    action: Action, words: Words, layout: Layout, pathway: PathwayId, tracked: Tracked = NOTHING
) -> Effect:
    """Return what an action does: what may change by itself, its acts in order, its own effects."""
    writing = _Writing(layout, pathway, tracked)
    *_, (_, effect) = _through(action, words, writing, restless=True)
    return effect


def line_effects(
    action: Action, words: Words, layout: Layout, pathway: PathwayId, tracked: Tracked
) -> list[Effect]:
    """Return what has been done just before each line of an action."""
    writing = _Writing(layout, pathway, tracked)
    return [
        effect
        for line, effect in _through(action, words, writing, restless=False)
        if line is not None
    ]


@dataclass(frozen=True, slots=True)
class _Writing:
    layout: Layout
    pathway: PathwayId
    tracked: Tracked

    def then(self, effects: Effects, so_far: Effect) -> Effect:
        """Return an effect followed by more."""
        for name in effects.stale:
            so_far = self.stale(self.layout.field(self.pathway, name), so_far)
        for name, values in effects.known:
            field = self.layout.field(self.pathway, name)
            bit = self.tracked.get(field.every, 0)
            so_far = Effect(
                so_far.keep & ~field.every & ~bit,
                so_far.add & ~field.every & ~bit | field.mask(values),
                tuple(each for each in so_far.if_narrowed if each[1] != bit),
            )
        return so_far

    def stale(self, field: Field, so_far: Effect) -> Effect:
        """Return an effect after which a field is known no longer."""
        every = field.every
        bit, add, narrowed = self.tracked.get(every, 0), so_far.add | every, so_far.if_narrowed
        if bit and so_far.add & every != every:
            if so_far.keep & every:
                narrowed = (*narrowed, (every, bit))
            else:
                add |= bit
        return Effect(so_far.keep, add, narrowed)


def _through(
    action: Action, words: Words, writing: _Writing, *, restless: bool
) -> Iterator[tuple[Line | None, Effect]]:
    """Yield each line with what was done before it, then no line and what the whole action does."""
    effect = Effect()
    if restless:
        for field in writing.layout.restless:
            effect = writing.stale(field, effect)
    for line in action.lines:
        yield line, effect
        act = words.acts.get(line.act or "")
        if act is not None:
            effect = writing.then(act.effects, effect)
    yield None, writing.then(action.effects, effect)


def condition_masks(condition: Condition, layout: Layout, pathway: PathwayId) -> tuple[int, Terms]:
    """Return the bits that must be gone for *surely*; of each finding all bits and those wanted."""
    forbidden, terms = 0, []
    for name, values in condition.terms:
        field = layout.field(pathway, name)
        mask = field.mask(values)
        forbidden |= field.every & ~mask
        terms.append((field.every, mask))
    return forbidden, tuple(terms)
