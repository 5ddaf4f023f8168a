"""The board of findings: what is known, partly known, stale and unknown in this pathway."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.layout import Field, layout_of
from chamberwise.engine.meaning.state import Freshness
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Branch, Question
from chamberwise.engine.model.words import FindingId
from chamberwise.engine.walk.walk import Walk, fields_in_play
from chamberwise.exports.record.naming import value_labels


@dataclass(frozen=True, slots=True)
class BoardRow:
    """One finding: its state in a word, and what is known or was last seen."""

    title: str
    freshness: Freshness
    said: str

    @property
    def state_words(self) -> str:
        """What is known, in words that stand without colour."""
        match self.freshness:
            case Freshness.KNOWN:
                return self.said
            case Freshness.PARTLY:
                return _("partly known: {said}").format(said=self.said)
            case Freshness.STALE:
                return _("STALE, last seen: {said}").format(said=self.said)
            case _:
                return _("unknown")


def board(walk: Walk) -> tuple[BoardRow, ...]:
    """Return the findings of the pathway stood on, and others already known, in reading order."""
    place = walk.state.place
    layout = layout_of(walk.library)
    own = (
        layout.field(place.pathway, name) for name in _named(walk.library.pathways[place.pathway])
    )
    fields = {field.finding.id: field for field in (*own, *fields_in_play(walk))}
    return tuple(_row(walk, field) for field in fields.values() if field.finding.choice is None)


def _named(pathway: Pathway) -> Iterable[FindingId]:
    return dict.fromkeys(_each_named(pathway))


def _each_named(pathway: Pathway) -> Iterator[FindingId]:
    for step in pathway.steps.values():
        if isinstance(step, Question):
            yield step.ask
        elif isinstance(step, Branch):
            for row in step.rows:
                yield from (name for name, _values in row.when.terms)


def _row(walk: Walk, field: Field) -> BoardRow:
    freshness = walk.state.freshness(field)
    known = freshness is not Freshness.UNKNOWN
    said = value_labels(field.finding, walk.state.values(field)) if known else ""
    return BoardRow(field.finding.title, freshness, said)
