"""From a pathway to what its pocket card says."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from chamberwise.engine.chart.labels import either
from chamberwise.engine.chart.ways import ways
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Line, Outcome, PathwayId, Question, StepId
from chamberwise.engine.model.step import SignalWord as Signal
from chamberwise.engine.model.words import ActId
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
from chamberwise.exports.script.headlines import headline, spoken, way_words
from chamberwise.exports.script.main_line import first_actions, main_line


def pocket_card(library: Library, name: PathwayId) -> PocketCard:
    """Return everything that may stand on the card, in the order of its worth."""
    pathway = library.pathways[name]
    line = main_line(pathway)
    first = first_actions(pathway, line)
    asked = [each for each in line if isinstance(pathway.steps[each], Question)]
    steps = pathway.steps.values()
    calls, local = dict.fromkeys(_calls(library, pathway)), library.local_to(name)
    acts = library.words(name).acts
    return PocketCard(
        pathway.title,
        pathway.wall_chart.use_when if pathway.wall_chart else pathway.summary,
        tuple(_first(library, pathway, each) for each in first),
        tuple(_decision(library, pathway, line, each) for each in asked[:MOST_DECISIONS]),
        sum(isinstance(each, Question) for each in steps),
        tuple(acts[each].title for each in calls),
        tuple(dict.fromkeys(_notes(pathway, (*(each.id for each in first), *line)))),
        len(set(_all_notes(pathway, tuple(pathway.steps)))),
        day(pathway.review_by),
        tuple(phone_told(local, each) for each in calls),
    )


def _first(library: Library, pathway: Pathway, step: Action) -> FirstAction:
    duties = library.words(pathway.id).duties
    lines = tuple(
        (duties[who].title if who in duties else who, " ".join(spoken(line) for line in alike))
        for who, alike in groupby(step.lines, key=lambda line: line.who)
    )
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


def _calls(library: Library, pathway: Pathway) -> Iterator[ActId]:
    acts = library.words(pathway.id).acts
    for line in _lines(pathway):
        act = acts.get(line.act or "")
        if act is not None and act.calls_for_help:
            yield act.id


def _lines(pathway: Pathway) -> Iterator[Line]:
    for step in pathway.steps.values():
        if isinstance(step, Action):
            yield from step.lines
        elif isinstance(step, Outcome):
            yield from step.owed


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
