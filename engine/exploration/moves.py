"""Answers, actions and conditions as masks over the bits of knowledge."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.meaning.layout import Field, Layout
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.step import Action, Answer, PathwayId, Question
from chamberwise.engine.model.words import Effects, Words

Terms = tuple[tuple[int, int], ...]


def answer_masks(question: Question, field: Field) -> Iterator[tuple[Answer, int]]:
    """Yield every answer with the bits it leaves possible; none for "cannot tell"."""
    for answer in question.answers:
        yield answer, field.mask(answer.means)


def action_effect(
    action: Action, words: Words, layout: Layout, pathway: PathwayId
) -> tuple[int, int]:
    """Return `keep` and `add`: an action turns bits into `bits & keep | add`."""
    keep, add = -1, sum(field.every for field in layout.restless)
    acts = [words.acts.get(line.act or "") for line in action.lines]
    effects = [act.effects for act in acts if act]
    for each in (*effects, action.effects):
        keep, add = _then(each, keep, add, layout, pathway)
    return keep, add


def _then(
    effects: Effects, keep: int, add: int, layout: Layout, pathway: PathwayId
) -> tuple[int, int]:
    for name in effects.stale:
        add |= layout.field(pathway, name).every
    for name, values in effects.known:
        field = layout.field(pathway, name)
        keep &= ~field.every
        add = add & ~field.every | field.mask(values)
    return keep, add


def condition_masks(condition: Condition, layout: Layout, pathway: PathwayId) -> tuple[int, Terms]:
    """Return the bits that must be gone for *surely*; of each finding all bits and those wanted."""
    forbidden, terms = 0, []
    for name, values in condition.terms:
        field = layout.field(pathway, name)
        mask = field.mask(values)
        forbidden |= field.every & ~mask
        terms.append((field.every, mask))
    return forbidden, tuple(terms)
