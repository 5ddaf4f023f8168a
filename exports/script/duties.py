"""Who does what in a step, and whom a pathway calls: told alike by every sheet."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Line, Outcome
from chamberwise.engine.model.words import Act
from chamberwise.exports.script.headlines import spoken


def tasks_by_duty(library: Library, pathway: Pathway, step: Action) -> Iterator[tuple[str, str]]:
    """Yield each duty by its title with what it does or says, as long as it goes on."""
    duties = library.words(pathway.id).duties
    for who, lines in groupby(step.lines, key=lambda line: line.who):
        title = duties[who].title if who in duties else who
        yield title, " ".join(map(spoken, lines))


def whom_to_call(library: Library, pathway: Pathway) -> tuple[Act, ...]:
    """Return, each once, the acts by which help is got, at the end as well."""
    acts = library.words(pathway.id).acts
    met = (acts.get(line.act or "") for line in _lines(pathway))
    return tuple({act.id: act for act in met if act and act.calls_for_help}.values())


def _lines(pathway: Pathway) -> Iterator[Line]:
    for step in pathway.steps.values():
        if isinstance(step, Action):
            yield from step.lines
        elif isinstance(step, Outcome):
            yield from step.owed
