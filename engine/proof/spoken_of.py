"""The findings that rules speak of."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from chamberwise.engine.meaning.layout import Field, layout_of
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import AnyOf, Happening, Rule
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.words import FindingId


def spoken_of(library: Library, pathway: PathwayId, roles: Iterable[AnyOf]) -> list[Field]:
    """Return the findings that happenings speak of: asked, or to be known or not."""
    names = dict.fromkeys(name for any_of in roles for each in any_of for name in _names(each))
    return _fields(library, pathway, names)


def tracked_fields(library: Library, pathway: PathwayId, rules: Sequence[Rule]) -> list[Field]:
    """Return the findings of which some rule asks whether they are stale or never known."""
    names = dict.fromkeys(
        name
        for rule in rules
        for any_of in (rule.of, rule.by, rule.scope.opens, rule.scope.closes)
        for each in any_of
        for name in (*each.stale, *each.unknown)
    )
    return _fields(library, pathway, names)


def _fields(library: Library, pathway: PathwayId, names: dict[FindingId, None]) -> list[Field]:
    layout = layout_of(library)
    return [layout.field(pathway, name) for name in names]


def _names(happening: Happening) -> Iterator[FindingId]:
    for condition in (
        happening.surely,
        happening.possibly,
        happening.unless_surely,
        happening.unless_possibly,
    ):
        for name, _ in condition.terms:
            yield name
    yield from (*happening.asks, *happening.known, *happening.unless_known)
    yield from (*happening.stale, *happening.unknown)
