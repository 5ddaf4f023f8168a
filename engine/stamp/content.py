"""The digest of what a pathway's sheets can print: its meaning and its wording, not its file.

Comments, the order of files and rules that bind a pathway are not printed and do not count. What
has its default value is left out, so that a later version with more to say finds the same digest.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import MISSING, Field, fields, is_dataclass
from datetime import date
from functools import cache, lru_cache
from hashlib import sha256
from typing import Any

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.reading.digest import reached_by_handover

NOT_PRINTED = ("words", "rules", "accepted", "reason_for_change", "seal", "work", "translated")
TABLES = ("findings", "acts", "duties", "kit", "sources")


@lru_cache(maxsize=64)
def content_digest(library: Library, pathway: PathwayId) -> str:
    """Return the SHA-256 of all that sheets of a pathway can say, in hexadecimal."""
    content = sha256()
    for name in reached_by_handover(library, pathway):
        said = plain(library.pathways[name])
        told = [said, _words_used(library, name, said)]
        content.update(json.dumps(told, ensure_ascii=False).encode() + b"\n")
    if local := library.local_to(pathway):
        content.update(json.dumps(plain(local), ensure_ascii=False).encode())
    return content.hexdigest()


def plain(value: Any) -> Any:
    """Return a value of the model as lists and texts; mappings keep document order."""
    if type(value) is str:
        return value
    if is_dataclass(value) and not isinstance(value, type):
        told = [[each.name, plain(getattr(value, each.name))] for each in _told(value)]
        return [type(value).__name__, *told]
    if isinstance(value, Mapping):
        return [[key, plain(each)] for key, each in value.items()]
    if isinstance(value, tuple):
        return [plain(each) for each in value]
    return value.isoformat() if isinstance(value, date) else value


def _told(value: Any) -> Iterator[Field[Any]]:
    for each in _printed(value.__class__):
        if not _is_default(each, getattr(value, each.name)):
            yield each


@cache
def _printed(kind: type) -> tuple[Field[Any], ...]:
    return tuple(each for each in fields(kind) if each.name not in NOT_PRINTED)


def _is_default(field: Field[Any], value: Any) -> bool:
    if field.default_factory is not MISSING:
        return bool(value == field.default_factory())
    return field.default is not MISSING and bool(value == field.default)


def words_used(library: Library, pathway: PathwayId) -> list[Any]:
    """Return every word that the pathway names, or that such a word names in turn."""
    return _words_used(library, pathway, plain(library.pathways[pathway]))


def _words_used(library: Library, pathway: PathwayId, said: Any) -> list[Any]:
    words = library.words(pathway)
    tables: dict[str, Mapping[str, Any]] = {name: getattr(words, name) for name in TABLES}
    named: set[str] = set()
    _name(said, named)
    found: dict[tuple[str, str], Any] = {}
    every = [(table, name) for table in TABLES for name in tables[table]]
    size = -1
    while size != len(found):
        size = len(found)
        for table, name in every:
            if name in named and (table, name) not in found:
                found[table, name] = plain(tables[table][name])
                _name(found[table, name], named)
    return [[*key, found[key]] for key in sorted(found)]


def _name(value: Any, named: set[str]) -> None:
    """Add every text in a value to those that are named."""
    if isinstance(value, str):
        named.add(value)
    elif isinstance(value, list):
        for each in value:
            _name(each, named)
