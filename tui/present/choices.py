"""Choices left to the unit: what it has set or, until then, every position with its sources."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.language.texts import N_
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.state import Freshness
from chamberwise.engine.model.step import Action, Question
from chamberwise.engine.model.words import Value
from chamberwise.engine.walk.walk import Walk
from chamberwise.exports.record.cited import cited
from chamberwise.exports.record.content import Cited

NOT_SET = N_("NOT SET LOCALLY")


@dataclass(frozen=True, slots=True)
class PositionView:
    """One position of a choice."""

    label: str
    says: str
    sources: tuple[Cited, ...]


@dataclass(frozen=True, slots=True)
class ChoiceView:
    """One choice: `chosen` where it is settled, else all positions and what is suggested."""

    title: str
    chosen: PositionView | None
    by_the_unit: bool
    positions: tuple[PositionView, ...]
    suggested: str
    because: str


def choices(walk: Walk) -> tuple[ChoiceView, ...]:
    """Return the choices the step depends on, or the one a question asks."""
    step = walk.step
    if isinstance(step, Action):
        return tuple(_view(walk, name) for name in step.choices)
    if isinstance(step, Question):
        finding = walk.library.finding(walk.state.place.pathway, step.ask)
        return (_view(walk, step.ask),) if finding.choice is not None else ()
    return ()


def _view(walk: Walk, name: str) -> ChoiceView:
    pathway = walk.state.place.pathway
    field = layout_of(walk.library).field(pathway, name)
    finding, choice = field.finding, field.finding.choice
    positions = {value.id: _position(walk, value) for value in finding.values}
    known = walk.state.freshness(field) is Freshness.KNOWN
    chosen = positions[walk.state.values(field)[0]] if known else None
    suggested = finding.value(choice.suggested or "") if choice else None
    return ChoiceView(
        title=finding.title,
        chosen=chosen,
        by_the_unit=bool(choice and choice.chosen),
        positions=tuple(positions.values()),
        suggested=suggested.label if suggested else "",
        because=choice.because if choice else "",
    )


def _position(walk: Walk, value: Value) -> PositionView:
    words = walk.library.words(walk.state.place.pathway)
    return PositionView(value.label, value.sign, cited(words, value.sources))
