"""Why a step is there, and what it rests on."""

from __future__ import annotations

from chamberwise.engine.walk.walk import Walk
from chamberwise.exports.record.cited import cited, sources_of
from chamberwise.exports.record.content import Cited


def reasons(walk: Walk) -> tuple[str, tuple[Cited, ...]]:
    """Return why the step stood on is there, and its sources, each with its mark in words."""
    place = walk.state.place
    words = walk.library.words(place.pathway)
    return walk.step.why, cited(words, sources_of(walk.library, place))
