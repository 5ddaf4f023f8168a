"""Steps with everything in them called as it is called now."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from chamberwise.engine.comparing.names.calling_words import condition_called, effects_called
from chamberwise.engine.comparing.names.named import Calls, Sort
from chamberwise.engine.graph.arrows import rewired
from chamberwise.engine.model.step import (
    Action,
    Answer,
    Branch,
    Caution,
    Handover,
    Line,
    Outcome,
    PathwayId,
    Question,
    Step,
)


def step_called(step: Step, calls: Calls, everywhere: Mapping[PathwayId, Calls]) -> Step:
    """Return a step under the names of now; `everywhere` has those of every pathway."""
    step = _of_kind(step, calls, everywhere)
    led = rewired(step, lambda _label, to: calls.now(Sort.STEP, to))
    return replace(
        led,
        id=calls.now(Sort.STEP, step.id),
        phase=calls.now(Sort.PHASE, step.phase),
        sources=calls.each(Sort.SOURCE, step.sources),
        cautions=tuple(_caution(each, calls) for each in step.cautions),
    )


def _of_kind(step: Step, calls: Calls, everywhere: Mapping[PathwayId, Calls]) -> Step:
    match step:
        case Question():
            answers = tuple(_answer(each, step, calls) for each in step.answers)
            return replace(step, ask=calls.now(Sort.FINDING, step.ask), answers=answers)
        case Action():
            return replace(
                step,
                lines=_lines(step.lines, calls),
                needs=calls.each(Sort.KIT, step.needs),
                choices=calls.each(Sort.FINDING, step.choices),
                effects=effects_called(step.effects, calls),
            )
        case Branch():
            rows = tuple(replace(row, when=condition_called(row.when, calls)) for row in step.rows)
            return replace(step, rows=rows)
        case Handover():
            there = everywhere.get(step.to, Calls())
            back = tuple((there.now(Sort.STEP, by), to) for by, to in step.on_return)
            return replace(step, on_return=back)
        case Outcome():
            return replace(step, owed=_lines(step.owed, calls))


def _answer(answer: Answer, step: Question, calls: Calls) -> Answer:
    """Return an answer; one that is called after its value goes with that."""
    sort, of = (Sort.ANSWER, step.id)
    if answer.means == (answer.id,):
        sort, of = Sort.VALUE, step.ask
    means = calls.each(Sort.VALUE, answer.means, step.ask)
    return replace(answer, id=calls.now(sort, answer.id, of), means=means)


def _lines(lines: tuple[Line, ...], calls: Calls) -> tuple[Line, ...]:
    return tuple(
        replace(
            each,
            who=calls.now(Sort.DUTY, each.who),
            act=each.act and calls.now(Sort.ACT, each.act),
            sources=calls.each(Sort.SOURCE, each.sources),
        )
        for each in lines
    )


def _caution(caution: Caution, calls: Calls) -> Caution:
    return replace(
        caution,
        guards=caution.guards and calls.now(Sort.ACT, caution.guards),
        sources=calls.each(Sort.SOURCE, caution.sources),
    )
