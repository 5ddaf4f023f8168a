"""What stands in a reader's script."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

CALL_OUTS = 10
STANDING = (
    "Read one line a breath. Stop when somebody says stop.",
    "Numbers are those of the full pathway.",
)


class Mark(StrEnum):
    """What the reader does with a line."""

    SAY = "SAY"
    HEAR = "HEAR"
    ASK = "ASK"
    WAIT = "WAIT"
    READ_BACK = "READ BACK"
    ANSWERED = "WAIT, READ BACK"
    ANSWER = "ANSWER"
    THEN = "THEN"
    GO_TO = "GO TO"
    CALL_OUT = "CALL OUT"


@dataclass(frozen=True, slots=True)
class ScriptLine:
    """One thing to do, in breaths; empty where the mark says it all. `deep` is 0, 1 or 2."""

    mark: Mark
    breaths: tuple[str, ...] = ()
    of: str = ""
    deep: int = 0


@dataclass(frozen=True, slots=True)
class ScriptStep:
    """A step of the main line by its number in the full pathway."""

    of: str
    number: int
    headline: tuple[str, ...]
    """In breaths: of a question its words, which are asked."""
    is_asked: bool
    lines: tuple[ScriptLine, ...]


@dataclass(frozen=True, slots=True)
class Script:
    """The whole script; `trigger` is when it is taken in hand."""

    title: str
    trigger: str
    steps: tuple[ScriptStep, ...]
