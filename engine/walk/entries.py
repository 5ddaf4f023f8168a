"""The entries of a walk's journal. Entries are only ever added; an undo is an entry as well."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import TypeAlias

from chamberwise.engine.meaning.state import Move


@dataclass(frozen=True, slots=True)
class Began:
    """The walk began; `digest` is that of the content it runs over."""

    at: datetime
    pathway: str
    edition: str
    digest: str


@dataclass(frozen=True, slots=True)
class Moved:
    """A question was answered or an action done."""

    at: datetime
    move: Move


@dataclass(frozen=True, slots=True)
class Undone:
    """The last move was taken back."""

    at: datetime


@dataclass(frozen=True, slots=True)
class Redone:
    """The last move taken back was made again."""

    at: datetime


@dataclass(frozen=True, slots=True)
class Noted:
    """Something was written down. Never patient identity."""

    at: datetime
    text: str


@dataclass(frozen=True, slots=True)
class Resumed:
    """The walk was taken up again after an interruption."""

    at: datetime


Entry: TypeAlias = Began | Moved | Undone | Redone | Noted | Resumed
