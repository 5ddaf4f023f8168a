"""Entries of a drill's journal as lines of JSON: the kind, then its fields by name.

A field left at its default is left out, so that a line stays short and old lines stay readable when
fields are added.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import fields
from datetime import datetime
from enum import Enum
from functools import cache
from types import UnionType
from typing import Any, Union, get_args, get_origin, get_type_hints

from chamberwise.engine.drill.entries import Entry
from chamberwise.engine.language.texts import gettext as _

_KINDS: Mapping[str, type] = {kind.__name__: kind for kind in get_args(Entry)}


class UnreadableEntryError(ValueError):
    """The line is no entry of a drill's journal; `args[0]` says what is wrong."""


def encode(entry: Entry) -> str:
    """Return one line of JSON without its line end."""
    values: dict[str, Any] = {"is": type(entry).__name__}
    for each in fields(entry):
        value = getattr(entry, each.name)
        if value != each.default:
            values[each.name] = _plain(value)
    return json.dumps(values, ensure_ascii=False, separators=(",", ":"))


def decode(line: str) -> Entry:
    """Return the entry of one line. Raises `UnreadableEntryError`."""
    try:
        values = json.loads(line)
        kind = _KINDS[values.pop("is")]
        made: Entry = kind(**{name: _read(kind)[name](said) for name, said in values.items()})
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError) as error:
        raise UnreadableEntryError(
            _("not an entry of a drill: {line}").format(line=repr(line[:60]))
        ) from error
    return made


def _plain(value: object) -> object:
    if isinstance(value, datetime):
        return value.isoformat()
    return value.value if isinstance(value, Enum) else value


@cache
def _read(kind: type) -> Mapping[str, Callable[[Any], Any]]:
    hints = get_type_hints(kind)
    return {each.name: _reader(hints[each.name]) for each in fields(kind)}


def _reader(hint: Any) -> Callable[[Any], Any]:
    """Return what makes a field's value of what JSON holds. Raises on what does not fit."""
    if get_origin(hint) in (UnionType, Union):
        inner = next(each for each in get_args(hint) if each is not type(None))
        return _or_none(_reader(inner))
    if get_origin(hint) is tuple:
        return lambda said: tuple(_exactly(str, each) for each in said)
    if hint is datetime:
        return datetime.fromisoformat
    if issubclass(hint, Enum):
        return lambda said: hint(said)
    return lambda said: _exactly(hint, said)


def _or_none(read: Callable[[Any], Any]) -> Callable[[Any], Any]:
    return lambda said: None if said is None else read(said)


def _exactly(kind: type, said: object) -> object:
    if type(said) is not kind:
        raise TypeError(f"{said!r} is no {kind.__name__}")
    return said
