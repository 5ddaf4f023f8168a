"""Whether a moment of a walk is one that a rule speaks of."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.meaning.condition import possibly, surely
from chamberwise.engine.meaning.layout import Field, Layout, layout_of
from chamberwise.engine.meaning.moments import Moment
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import ANY, AnyOf, Happening
from chamberwise.engine.model.step import PathwayId


def happens(library: Library, rule_of: PathwayId, any_of: AnyOf, moment: Moment) -> bool:
    """Whether a moment shows one of several happenings.

    Findings are those of the pathway whose walks the rule binds: its own words, then the shared.
    """
    return any(
        shows_event(each, moment) and _known(library, rule_of, each, moment) for each in any_of
    )


def shows_event(wanted: Happening, moment: Moment) -> bool:
    """Whether a moment shows a happening as far as it does not speak of what is known."""
    outcome = moment.place.step if moment.is_outcome else None
    return (
        _one_of(wanted.acts, moment.act)
        and _one_of(wanted.by, moment.by)
        and (not wanted.warns_of or not moment.warns_of.isdisjoint(wanted.warns_of))
        and _one_of(wanted.asks, moment.asks)
        and (_one_of(wanted.outcomes, outcome) or (outcome is not None and ANY in wanted.outcomes))
        and _one_of(wanted.hands_over_to, moment.hands_over_to)
    )


def _one_of(wanted: Sequence[str], shown: str | None) -> bool:
    return not wanted or shown in wanted


def _known(library: Library, pathway: PathwayId, wanted: Happening, moment: Moment) -> bool:
    layout, bits = layout_of(library), moment.possible
    if not surely(wanted.surely, bits, layout, pathway):
        return False
    if not possibly(wanted.possibly, bits, layout, pathway):
        return False
    if _says(wanted.unless_surely) and surely(wanted.unless_surely, bits, layout, pathway):
        return False
    if _says(wanted.unless_possibly) and possibly(wanted.unless_possibly, bits, layout, pathway):
        return False
    return _fresh(layout, pathway, wanted, moment)


def _says(condition: Condition) -> bool:
    return bool(condition.terms)


def _fresh(layout: Layout, pathway: PathwayId, wanted: Happening, moment: Moment) -> bool:
    def fields(names: Sequence[str]) -> list[Field]:
        return [layout.field(pathway, name) for name in names]

    return (
        all(_is_known(field, moment) for field in fields(wanted.known))
        and not (
            wanted.unless_known
            and all(_is_known(field, moment) for field in fields(wanted.unless_known))
        )
        and all(moment.last_seen & field.every for field in fields(wanted.stale))
        and all(_is_unknown(field, moment) for field in fields(wanted.unknown))
    )


def _is_known(field: Field, moment: Moment) -> bool:
    return (moment.possible & field.every).bit_count() == 1


def _is_unknown(field: Field, moment: Moment) -> bool:
    return moment.possible & field.every == field.every and not moment.last_seen & field.every
