"""Where each word is used: the places of a library that name it, the word itself left blank."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TypeAlias

from chamberwise.engine.checks.references import Of, Reference, of_words, references
from chamberwise.engine.comparing.names.named import Sort
from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId

Uses: TypeAlias = Mapping[tuple[Sort, str], frozenset[tuple[PathwayId, Pointer]]]

_SORTS = {
    Of.FINDING: Sort.FINDING,
    Of.CHOICE: Sort.FINDING,
    Of.ACT: Sort.ACT,
    Of.DUTY: Sort.DUTY,
    Of.KIT: Sort.KIT,
    Of.SOURCE: Sort.SOURCE,
}
_BLANK = ""


def uses(library: Library, pathways: Mapping[PathwayId, PathwayId]) -> Uses:
    """Return where each word is used in some pathways and the shared words.

    A pathway is called as `pathways` says, so that both versions call it alike.
    """
    found: dict[tuple[Sort, str], set[tuple[PathwayId, Pointer]]] = {}
    for pathway, each in _named(library, pathways):
        sort = _SORTS.get(each.of)
        if sort is not None and each.value_of is None:
            pointer = tuple(_BLANK if part == each.name else part for part in each.pointer)
            found.setdefault((sort, each.name), set()).add((pathway, pointer))
    return {key: frozenset(places) for key, places in found.items()}


def _named(
    library: Library, pathways: Mapping[PathwayId, PathwayId]
) -> Iterator[tuple[PathwayId, Reference]]:
    for each in of_words(library.shared):
        yield _BLANK, each
    for was, now in pathways.items():
        for each in references(library.pathways[was]):
            yield now, each
