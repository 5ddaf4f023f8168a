"""A caution is left out, or a danger is told as a mere notice."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Caution, SignalWord, Step
from chamberwise.engine.model.words import Words
from chamberwise.engine.mutants.editing import numbered, with_steps
from chamberwise.engine.mutants.mutant import Mutant, mutant

DROP = "drop-caution"
WEAKEN = "weaken-caution"
WORDS_SHOWN = 5


def dropped(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield the pathway without each caution."""
    for step, place, at in _each(pathway):
        cautions = [*step.cautions[:place], *step.cautions[place + 1 :]]
        what = _("`{step}` is without its {caution}").format(
            step=step.id, caution=_shown(step.cautions[place])
        )
        yield mutant(DROP, at, what, _with(pathway, step, cautions))


def weakened(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield the pathway with each danger told as a notice."""
    for step, place, at in _each(pathway):
        if step.cautions[place].signal is SignalWord.DANGER:
            cautions = [*step.cautions]
            cautions[place] = replace(cautions[place], signal=SignalWord.NOTICE)
            what = _("`{step}` tells as a mere notice its {caution}").format(
                step=step.id, caution=_shown(step.cautions[place])
            )
            yield mutant(WEAKEN, at, what, _with(pathway, step, cautions))


def _each(pathway: Pathway) -> Iterator[tuple[Step, int, str]]:
    for name, step in pathway.steps.items():
        for place, at in enumerate(numbered(_name(each) for each in step.cautions)):
            yield step, place, f"{name}/{at}"


def _name(caution: Caution) -> str:
    """Return what a caution is called by: the act it guards, or how its text begins."""
    return caution.guards or " ".join(caution.harm.rstrip(".").split()[:WORDS_SHOWN])


def _shown(caution: Caution) -> str:
    return f"{_(caution.signal)}: {caution.harm}"


def _with(pathway: Pathway, step: Step, cautions: list[Caution]) -> Pathway:
    return with_steps(pathway, replace(step, cautions=tuple(cautions)))
