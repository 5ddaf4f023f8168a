"""What a record says, as plain values. Renderers see nothing else."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum


class EntryKind(StrEnum):
    """What an entry of a record tells."""

    ANSWERED = "answered"
    DONE = "done"
    HANDED_OVER = "handed over"
    TAKEN_BACK = "taken back"
    MADE_AGAIN = "made again"
    NOTE = "note"
    RESUMED = "resumed"


@dataclass(frozen=True, slots=True)
class RecordedLine:
    """One instruction and whose it was; `voice` is "does" or "says"."""

    who: str
    voice: str
    text: str


@dataclass(frozen=True, slots=True)
class RecordedCaution:
    """A caution that was shown, with the right thing it was paired with."""

    signal: str
    harm: str
    instead: str


@dataclass(frozen=True, slots=True)
class RecordedChoice:
    """A choice left to the unit: what was chosen, and by whom; nothing where it is not set."""

    title: str
    chosen: str = ""
    by: str = ""


@dataclass(frozen=True, slots=True)
class RecordedEntry:
    """One line of a walk's history. A move that was taken back stays, with `stands` false."""

    kind: EntryKind
    at: datetime
    elapsed: int
    number: int | None = None
    phase: str = ""
    text: str = ""
    answer: str = ""
    asked_again: str = ""
    lines: tuple[RecordedLine, ...] = ()
    cautions: tuple[RecordedCaution, ...] = ()
    choices: tuple[RecordedChoice, ...] = ()
    went_stale: tuple[str, ...] = ()
    passed: tuple[str, ...] = ()
    stands: bool = True


@dataclass(frozen=True, slots=True)
class Owed:
    """Something owed after the walk: who, what, by when, and the outcome that says so."""

    who: str
    what: str
    by_when: str
    outcome: str


@dataclass(frozen=True, slots=True)
class Cited:
    """A source with its mark, in one word and in words."""

    cite: str
    mark: str
    mark_words: str
    where: str


@dataclass(frozen=True, slots=True)
class RecordContent:
    """The whole of a record."""

    standing: str
    pathway: str
    title: str
    edition: str
    marks: tuple[str, ...]
    digest: str
    began: datetime
    ended: datetime
    finished: bool
    passed_at_start: tuple[str, ...]
    entries: tuple[RecordedEntry, ...]
    standing_on: str
    """The outcome reached or, unfinished, the step stood on."""
    owed: tuple[Owed, ...]
    sources: tuple[Cited, ...]
    choices: tuple[RecordedChoice, ...] = ()
    """Every choice that the pathways walked leave to the unit."""
    remark: str = ""

    @property
    def duration(self) -> int:
        """Seconds from the first entry to the last."""
        return max(0, int((self.ended - self.began).total_seconds()))
