"""Local sheets that name what is called otherwise now, or is gone: each place that has to be

mended before the sheet lies over the new version.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from chamberwise.engine.comparing.change import Change, Kind
from chamberwise.engine.comparing.names.named import TABLES, Names
from chamberwise.engine.diagnostics.problem import Span
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.engine.reading.library import File
from chamberwise.engine.reading.tree import Listing, Node, Scalar, Table

_PLACE = " / "
_SPEAKS = ("says", "does", "title", "because", "why", "method", "question", "label", "source")
"""Keys under which texts stand, never names."""
_PHRASED = (Kind.STEP, Kind.FINDING, Kind.ACT, Kind.DUTY, Kind.KIT, Kind.SOURCES, Kind.RULE)


@dataclass(frozen=True, slots=True)
class ToMend:
    """A place in a sheet that names something by its old name; `now` is empty where it is gone."""

    file: str
    line: int
    was: str
    now: str


def to_mend(
    sheets: Iterable[File],
    old: Library,
    pathway: PathwayId,
    names: Names,
    found: Iterable[Change],
    renamed: Mapping[PathwayId, PathwayId] = MappingProxyType({}),
) -> tuple[ToMend, ...]:
    """Return the places of sheets over a pathway, or over one that reaches it, by file and line.

    `renamed` has the pathways that are called otherwise now.
    """
    called = {each.name: now for each, now in names.items()} | dict(_gone(found)) | dict(renamed)
    return tuple(
        ToMend(file.shown_as, span.line, name, called[name])
        for file in sheets
        if file.sheet is not None and _reaches(old, file.sheet.local.over, pathway)
        for name, span in _named(file.tree.root, called)
    )


def _gone(found: Iterable[Change]) -> Iterator[tuple[str, str]]:
    tables = ("steps", *TABLES.values())
    for each in found:
        is_whole = each.at.table in tables and each.at.name and not each.at.part
        if is_whole and each.kind in _PHRASED and not each.now and each.was:
            yield each.at.name, ""


def _reaches(library: Library, over: PathwayId, pathway: PathwayId) -> bool:
    return over in library.pathways and pathway in reached_by_handover(library, over)


def _named(node: Node | None, called: Mapping[str, str]) -> Iterator[tuple[str, Span]]:
    """Yield each name that stands alone, or as a part of a place, with where it stands."""
    match node:
        case Scalar():
            for part in node.text.split(_PLACE):
                if part.strip() in called:
                    yield part.strip(), node.span
        case Listing():
            for each in node.items:
                yield from _named(each, called)
        case Table():
            for key, entry in node.entries.items():
                if key in called:
                    yield key, entry.key.span
                if key not in _SPEAKS:
                    yield from _named(entry.value, called)
