"""What is told of a stamp, ready for any form."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum


class Worth(StrEnum):
    """What a stamp is worth."""

    CURRENT = "current"
    SUPERSEDED = "superseded"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class CopyShown:
    """One printed copy."""

    code: str
    title: str
    sheet: str
    edition: str
    paper: str
    printed: date
    hangs: str
    worth: Worth


@dataclass(frozen=True, slots=True)
class StampShown:
    """One stamp. `now` is what its pathway is today; `changed` says what differs, in few lines."""

    code: str
    worth: Worth
    pathway: str
    title: str
    sheet: str
    edition: str
    now: str
    copies: tuple[CopyShown, ...]
    changed: tuple[str, ...]
    said: tuple[str, ...]
    """What else has to be known, as sentences."""
