"""A problem of a file: what is wrong, where, why it matters, and what to do next."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import NamedTuple

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _


class Severity(StrEnum):
    """How much a problem matters. Only `NOTICE` leaves a file clean."""

    ERROR = N_("error")
    WARNING = N_("warning")
    NOTICE = N_("notice")

    @property
    def in_words(self) -> str:
        """The word for it in the language that is spoken; its value is the same in every one."""
        return _(self.value)


Pointer = tuple[str | int, ...]
"""A route of keys and indices from the top of a file to the place spoken of."""


def pointer_text(pointer: Pointer) -> str:
    """Return the route as it is shown and as `at:` names it, e.g. `steps / fill-chamber / do / 1`.

    >>> pointer_text(("steps", "fill-chamber", "do", 0))
    'steps / fill-chamber / do / 1'
    """
    return " / ".join(str(part + 1) if isinstance(part, int) else part for part in pointer)


class Span(NamedTuple):
    """A stretch of one file. Lines and columns count from 1, columns in characters."""

    line: int
    column: int
    end_line: int
    end_column: int


@dataclass(frozen=True, slots=True)
class Note:
    """A second place that explains a problem, e.g. where a name was first defined."""

    message: str
    file: str
    span: Span | None


@dataclass(frozen=True, slots=True)
class Problem:
    """One problem, ready to be shown. `file` is the path as the user gave it."""

    code: str
    severity: Severity
    file: str
    pointer: Pointer
    span: Span | None
    message: str
    why: str
    advice: str
    notes: tuple[Note, ...] = ()
