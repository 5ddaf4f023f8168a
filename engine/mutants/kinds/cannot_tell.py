""" "Cannot tell" is left out of a question, or treated as one of the answers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from chamberwise.engine.graph.arrows import turned
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import CANNOT_TELL, Question
from chamberwise.engine.model.words import Words
from chamberwise.engine.mutants.editing import with_steps
from chamberwise.engine.mutants.mutant import Mutant, mutant

KIND = "cannot-tell"


def mutants(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield each question without "cannot tell", and with it leading where each answer leads."""
    for name, step in pathway.steps.items():
        if isinstance(step, Question) and any(each.id == CANNOT_TELL for each in step.answers):
            yield from _of_question(pathway, name, step)


def _of_question(pathway: Pathway, name: str, step: Question) -> Iterator[Mutant]:
    told = [each for each in step.answers if each.id != CANNOT_TELL]
    silent = with_steps(pathway, replace(step, answers=tuple(told)))
    yield mutant(
        KIND,
        f"{name}/left out",
        _("`{name}` cannot be answered `{cannot_tell}`").format(name=name, cannot_tell=CANNOT_TELL),
        silent,
    )
    unclear = next(each for each in step.answers if each.id == CANNOT_TELL)
    for answer in told:
        if answer.go_to == unclear.go_to:
            continue
        what = _("`{cannot_tell}` at `{name}` leads where `{answer}` leads").format(
            cannot_tell=CANNOT_TELL, name=name, answer=answer.id
        )
        taken = with_steps(pathway, turned(step, CANNOT_TELL, answer.go_to))
        yield mutant(KIND, f"{name}/as {answer.id}", what, taken)
