"""From a pathway to what its pocket card says."""

from __future__ import annotations

from chamberwise.engine.chart.labels import either
from chamberwise.engine.chart.ways import ways
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, PathwayId, Question, StepId
from chamberwise.engine.model.step import SignalWord as Signal
from chamberwise.exports.control.content import day
from chamberwise.exports.control.extract import phone_told
from chamberwise.exports.pocket.content import (
    MOST_DECISIONS,
    Decision,
    Exit,
    FirstAction,
    Note,
    PocketCard,
)
from chamberwise.exports.script.duties import tasks_by_duty, whom_to_call
from chamberwise.exports.script.headlines import headline, way_words
from chamberwise.exports.script.main_line import first_actions, main_line


def pocket_card(library: Library, name: PathwayId) -> PocketCard:
    """Return everything that may stand on the card, in the order of its worth."""
    pathway = library.pathways[name]
    line = main_line(pathway)
    first = first_actions(pathway, line)
    asked = [each for each in line if isinstance(pathway.steps[each], Question)]
    steps = pathway.steps.values()
    calls, local = whom_to_call(library, pathway), library.local_to(name)
    return PocketCard(
        pathway.title,
        pathway.wall_chart.use_when if pathway.wall_chart else pathway.summary,
        tuple(_first(library, pathway, each) for each in first),
        tuple(_decision(library, pathway, line, each) for each in asked[:MOST_DECISIONS]),
        sum(isinstance(each, Question) for each in steps),
        tuple(act.title for act in calls),
        tuple(dict.fromkeys(_notes(pathway, (*(each.id for each in first), *line)))),
        len(set(_all_notes(pathway, tuple(pathway.steps)))),
        day(pathway.review_by),
        tuple(phone_told(local, act.id) for act in calls),
    )


def _first(library: Library, pathway: Pathway, step: Action) -> FirstAction:
    lines = tuple(tasks_by_duty(library, pathway, step))
    return FirstAction(f"{pathway.id}/{step.id}", headline(library, step), lines)


def _decision(
    library: Library, pathway: Pathway, line: tuple[StepId, ...], here: StepId
) -> Decision:
    step = pathway.steps[here]
    exits = tuple(
        Exit(
            f"{pathway.id}/{here}",
            either(way.labels),
            way_words(library, pathway, line, here, way),
        )
        for way in ways(library, pathway.id, here, frozenset(line))
    )
    return Decision(f"{pathway.id}/{here}", headline(library, step), exits)


def _notes(pathway: Pathway, names: tuple[StepId, ...]) -> list[Note]:
    """Return the dangers of some steps, then their warnings."""
    found = _all_notes(pathway, names)
    worst = [each for each in found if each.signal == Signal.DANGER.upper()]
    return worst + [each for each in found if each.signal == Signal.WARNING.upper()]


def _all_notes(pathway: Pathway, names: tuple[StepId, ...]) -> list[Note]:
    return [
        Note(each.signal.value.upper(), each.harm, each.instead)
        for name in names
        for each in pathway.steps[name].cautions
    ]
