"""The sources a walk rests on, each with its mark in words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Action, Line, Outcome, Question, Step
from chamberwise.engine.model.words import SourceId, Words
from chamberwise.exports.record.cautions import cautions_at
from chamberwise.exports.record.content import Cited
from chamberwise.exports.record.naming import MARK_WORDS


def cited(words: Words, names: Iterable[SourceId]) -> tuple[Cited, ...]:
    """Return the sources of those names, each once; names without a source are left out."""
    found = (words.sources.get(name) for name in dict.fromkeys(names))
    return tuple(
        Cited(source.cite, source.mark.value, _(MARK_WORDS[source.mark]), source.where)
        for source in found
        if source
    )


def cited_at(library: Library, places: Iterable[Place]) -> tuple[Cited, ...]:
    """Return every source of some steps, each once, in the order met."""
    found = (
        cite
        for place in places
        for cite in cited(library.words(place.pathway), sources_of(library, place))
    )
    return tuple(dict.fromkeys(found))


def sources_of(library: Library, place: Place) -> Iterator[SourceId]:
    """Yield the sources of a step, its cautions, its lines, and the finding it asks."""
    step = library.step(place)
    yield from step.sources
    for caution in cautions_at(library, place):
        yield from caution.sources
    for line in _lines(step):
        yield from line.sources
    words = library.words(place.pathway)
    if isinstance(step, Question) and step.ask in words.findings:
        finding = words.findings[step.ask]
        yield from finding.sources
        for value in finding.values:
            yield from value.sources


def _lines(step: Step) -> tuple[Line, ...]:
    if isinstance(step, Action):
        return step.lines
    return step.owed if isinstance(step, Outcome) else ()
