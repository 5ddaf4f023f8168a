"""The choices left to the unit: what it has set, what was chosen in the walk, what is not set."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.layout import Field, layout_of
from chamberwise.engine.meaning.state import Freshness
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Branch, Question
from chamberwise.engine.model.words import FindingId
from chamberwise.engine.walk.walk import Walk
from chamberwise.exports.record.content import RecordedChoice
from chamberwise.exports.record.naming import value_labels

BY_THE_UNIT = N_("set by this unit")
IN_THE_WALK = N_("chosen in this walk")


def choices_here(walk: Walk) -> tuple[RecordedChoice, ...]:
    """Return the choices that the action stood on depends on."""
    step, pathway = walk.step, walk.state.place.pathway
    if not isinstance(step, Action):
        return ()
    return _told(walk, (layout_of(walk.library).field(pathway, name) for name in step.choices))


def choices_met(walk: Walk) -> tuple[RecordedChoice, ...]:
    """Return every choice of the pathways walked, in the order walked."""
    places = (*(leg.before.place for leg in walk.legs), walk.state.place)
    layout = layout_of(walk.library)
    named = (
        layout.field(pathway, name)
        for pathway in dict.fromkeys((walk.began.pathway, *(place.pathway for place in places)))
        for name in _spoken_of(walk.library.pathways[pathway])
    )
    fields = {field.every: field for field in named if field.finding.choice is not None}
    return _told(walk, fields.values())


def _spoken_of(pathway: Pathway) -> Iterator[FindingId]:
    yield from pathway.words.findings
    for step in pathway.steps.values():
        match step:
            case Action(choices=names):
                yield from names
            case Question(ask=name):
                yield name
            case Branch(rows=rows):
                yield from (name for row in rows for name, _rest in row.when.terms)


def _told(walk: Walk, fields: Iterable[Field]) -> tuple[RecordedChoice, ...]:
    return tuple(_choice(walk, field) for field in fields)


def _choice(walk: Walk, field: Field) -> RecordedChoice:
    finding = field.finding
    if walk.state.freshness(field) is not Freshness.KNOWN:
        return RecordedChoice(finding.title)
    by = _(BY_THE_UNIT) if finding.choice and finding.choice.chosen else _(IN_THE_WALK)
    return RecordedChoice(finding.title, value_labels(finding, walk.state.values(field)), by)
