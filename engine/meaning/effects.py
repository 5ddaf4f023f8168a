"""What an action does to knowledge: its acts' effects in order, then its own, then restlessness."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.meaning.layout import Layout
from chamberwise.engine.model.step import Action, Line, PathwayId
from chamberwise.engine.model.words import NO_EFFECTS, Effects, Words

Knowledge = tuple[int, int]
"""The values possible, and the values last seen of stale findings."""


def after_action(
    action: Action, knowledge: Knowledge, words: Words, layout: Layout, pathway: PathwayId
) -> Knowledge:
    """Return what is known once an action is done.

    Findings that may change by themselves go stale, unless this very action makes them known.
    """
    for field in layout.restless:
        knowledge = _gone_stale(knowledge, field.every)
    for line in action.lines:
        knowledge = _apply(_effects(line, words), knowledge, layout, pathway)
    return _apply(action.effects, knowledge, layout, pathway)


def after_act(
    act: str, knowledge: Knowledge, words: Words, layout: Layout, pathway: PathwayId
) -> Knowledge:
    """Return what is known once a single act is done, whoever asked for it."""
    known = words.acts.get(act)
    return _apply(known.effects if known else NO_EFFECTS, knowledge, layout, pathway)


def after_its_acts(
    action: Action, knowledge: Knowledge, layout: Layout, pathway: PathwayId
) -> Knowledge:
    """Return what is known once an action is done whose acts were followed one by one.

    What may change by itself goes stale, and the action's own effects come last.
    """
    for field in layout.restless:
        knowledge = _gone_stale(knowledge, field.every)
    return _apply(action.effects, knowledge, layout, pathway)


def before_each_line(
    action: Action, knowledge: Knowledge, words: Words, layout: Layout, pathway: PathwayId
) -> Iterator[Knowledge]:
    """Yield what is known just before each line: the acts of the lines before it have been done.

    What may change by itself is taken to hold until the whole action is done.
    """
    for line in action.lines:
        yield knowledge
        knowledge = _apply(_effects(line, words), knowledge, layout, pathway)


def _effects(line: Line, words: Words) -> Effects:
    act = words.acts.get(line.act or "")
    return act.effects if act else NO_EFFECTS


def _apply(effects: Effects, knowledge: Knowledge, layout: Layout, pathway: PathwayId) -> Knowledge:
    for name in effects.stale:
        knowledge = _gone_stale(knowledge, layout.field(pathway, name).every)
    possible, last_seen = knowledge
    for name, values in effects.known:
        field = layout.field(pathway, name)
        possible = possible & ~field.every | field.mask(values)
        last_seen &= ~field.every
    return possible, last_seen


def _gone_stale(knowledge: Knowledge, every: int) -> Knowledge:
    possible, last_seen = knowledge
    if possible & every == every:
        return knowledge
    return possible | every, last_seen | possible & every
