"""A value is counted to another answer of its question."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Answer, Question
from chamberwise.engine.model.words import ValueId, Words
from chamberwise.engine.mutants.editing import with_steps
from chamberwise.engine.mutants.mutant import Mutant, mutant

KIND = "move-value"


def mutants(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield each question with each value moved to each other answer that stands for values."""
    for name, step in pathway.steps.items():
        if isinstance(step, Question):
            for value, answer in _moves(step):
                what = _("`{value}` is answered by `{answer}` at `{name}`").format(
                    value=value, answer=answer.id, name=name
                )
                moved = replace(step, answers=tuple(_moved(step, value, answer)))
                yield mutant(KIND, f"{name}/{value} -> {answer.id}", what, _in(pathway, moved))


def _in(pathway: Pathway, step: Question) -> Pathway:
    return with_steps(pathway, step)


def _moves(step: Question) -> Iterator[tuple[ValueId, Answer]]:
    for answer in step.answers:
        for value in answer.means:
            for other in step.answers:
                if other.means and other.id != answer.id:
                    yield value, other


def _moved(step: Question, value: ValueId, to: Answer) -> Iterator[Answer]:
    for answer in step.answers:
        if answer.id == to.id:
            yield replace(answer, means=(*answer.means, value))
        elif value not in answer.means:
            yield answer
        elif len(answer.means) > 1:
            yield replace(answer, means=tuple(each for each in answer.means if each != value))
