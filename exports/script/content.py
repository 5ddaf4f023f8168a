"""What stands in a reader's script."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

CALL_OUTS = 10
STANDING = (
    N_("Read one line a breath. Stop when somebody says stop."),
    N_("Numbers are those of the full pathway."),
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

    @property
    def told(self) -> str:
        """The mark as it stands before a line."""
        return _(_TOLD[self])


_TOLD = {
    Mark.SAY: N_("SAY"),
    Mark.HEAR: N_("HEAR"),
    Mark.ASK: N_("ASK"),
    Mark.WAIT: N_("WAIT"),
    Mark.READ_BACK: N_("READ BACK"),
    Mark.ANSWERED: N_("WAIT, READ BACK"),
    Mark.ANSWER: N_("ANSWER"),
    Mark.THEN: N_("THEN"),
    Mark.GO_TO: N_("GO TO"),
    Mark.CALL_OUT: N_("CALL OUT"),
}


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
