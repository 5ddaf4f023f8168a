"""Journal entries as lines of JSON, each readable on its own."""

from __future__ import annotations

import json
from datetime import datetime
from typing import Any

from chamberwise.engine.meaning.state import Answered, Done, Move
from chamberwise.engine.walk.entries import Began, Entry, Moved, Noted, Redone, Resumed, Undone

FORMAT = 1


class UnreadableEntryError(ValueError):
    """The line is no journal entry of this format; `args[0]` says what is wrong."""


def encode(entry: Entry) -> str:
    """Return one line of JSON without its line end."""
    values: dict[str, Any] = {"at": entry.at.isoformat()}
    match entry:
        case Began():
            values |= {
                "began": entry.pathway,
                "edition": entry.edition,
                "digest": entry.digest,
                "format": FORMAT,
            }
        case Moved():
            values["moved"] = _move_values(entry.move)
        case Noted():
            values["noted"] = entry.text
        case Undone() | Redone() | Resumed():
            values[type(entry).__name__.lower()] = True
    return json.dumps(values, ensure_ascii=False)


def decode(line: str) -> Entry:
    """Return the entry of one line. Raises `UnreadableEntryError`."""
    try:
        values = json.loads(line)
        return _entry(values, datetime.fromisoformat(values["at"]))
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError) as error:
        raise UnreadableEntryError(f"not a journal entry: {line[:60]!r}") from error


def _entry(values: dict[str, Any], at: datetime) -> Entry:
    if "began" in values:
        if values["format"] != FORMAT:
            raise ValueError("another format")
        return Began(at, str(values["began"]), str(values["edition"]), str(values["digest"]))
    if "moved" in values:
        return Moved(at, _move(values["moved"]))
    if "noted" in values:
        return Noted(at, str(values["noted"]))
    for kind in (Undone, Redone, Resumed):
        if kind.__name__.lower() in values:
            return kind(at)
    raise ValueError("no known entry")


def _move_values(move: Move) -> dict[str, str | bool]:
    return {"answer": move.answer} if isinstance(move, Answered) else {"done": True}


def _move(values: dict[str, Any]) -> Move:
    if values == {"done": True}:
        return Done()
    return Answered(str(values["answer"]))
