"""The digest of what an approval is given to, whole and by parts.

Everything counts that is printed or that binds the pathway; its status and the approval do not.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields
from typing import Any

from chamberwise.engine.keys.digest import short_digest
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway, Seal
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.engine.stamp.content import plain, words_used

_HEAD = ("edition", "authors", "reviewed", "review_by", "reason_for_change")
_APART = ("status", "approved_by", "approved_on", "seal", "words", "steps", "accepted")
_UNIT = ("id", "unit", "over", "base_edition", "base_digest", "covers", "change")


def seal_of(library: Library, pathway: PathwayId) -> Seal:
    """Return the digests of a pathway; under a unit's sheet, those of all the sheet covers."""
    local = library.local_to(pathway)
    name = local.over if local else pathway
    parts = {part: short_digest(value) for part, value in _parts(library, name)}
    return Seal(short_digest(list(map(list, parts.items()))), parts)


def changed_since(seal: Seal, now: Seal) -> tuple[str, ...]:
    """Return the names of the parts in which two contents differ, as they are told."""
    names = dict.fromkeys((*seal.parts, *now.parts))
    return tuple(
        name.replace("-", " ") for name in names if seal.parts.get(name) != now.parts.get(name)
    )


def _parts(library: Library, name: PathwayId) -> Iterator[tuple[str, Any]]:
    own, *others = reached_by_handover(library, name)
    pathway = library.pathways[own]
    yield "head", [[each, plain(getattr(pathway, each))] for each in _HEAD]
    yield "frame", _frame(pathway)
    yield "steps", plain(pathway.steps)
    yield "rules", _bound(library, name)
    yield "words", words_used(library, name)
    for other in others:
        reached = library.pathways[other]
        yield other, [_frame(reached), plain(reached.steps), words_used(library, other)]
    if local := library.local_to(name):
        yield "unit", [[each, plain(getattr(local, each))] for each in _UNIT]
        for each in fields(local):
            if each.name not in _UNIT and getattr(local, each.name):
                yield each.name.replace("_", "-"), plain(getattr(local, each.name))


def _frame(pathway: Pathway) -> list[Any]:
    """Return all that stands outside steps and words, but for the head."""
    names = [each.name for each in fields(pathway) if each.name not in (*_HEAD, *_APART)]
    return [[name, plain(getattr(pathway, name))] for name in names]


def _bound(library: Library, name: PathwayId) -> list[Any]:
    """Return the rules of the pathway's own and the problems accepted there."""
    pathway = library.pathways[name]
    return [plain(dict(pathway.words.rules)), plain(pathway.accepted)]
