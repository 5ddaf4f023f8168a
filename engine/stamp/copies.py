"""What was printed: copies, and of each content as much as is needed to say what changed since."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from chamberwise.engine.stamp.sheet import language_of


@dataclass(frozen=True, slots=True)
class Copy:
    """One printed sheet: never whose, only where it hangs (empty while nobody said)."""

    code: str
    pathway: str
    title: str
    edition: str
    sheet: str
    """Its name: the kind, and the language where that is not English."""
    paper: str
    printed: date
    content: str
    """The digest of its content."""
    hangs: str = ""
    source: str = ""
    """The file it was printed from, where that lies outside the library."""

    @property
    def language(self) -> str:
        """The language it is in, by code: the name of the sheet tells it."""
        return language_of(self.sheet)


@dataclass(frozen=True, slots=True)
class KeptStep:
    """A step as it was printed, in words."""

    says: str
    ways: tuple[tuple[str, str], ...]
    """Each way on: in words how it comes to it, and the place it leads to."""
    lines: tuple[str, ...]
    cautions: tuple[str, ...]
    rest: str
    """A short digest of the whole step, to notice that anything else changed."""


@dataclass(frozen=True, slots=True)
class Snapshot:
    """A content as it was printed: `steps` by place, `pathway/step`, in document order."""

    edition: str
    approval: str
    steps: Mapping[str, KeptStep]
    source: str = ""
    """Of a translated sheet, the digest of what the pathway said in English."""
    unit: Mapping[str, str] = field(default_factory=dict)
    """Of a unit's sheet, the digest of what stands under each of its keys."""


@dataclass(frozen=True, slots=True)
class Register:
    """Every copy in the order printed, and the contents they have, by digest."""

    copies: tuple[Copy, ...] = ()
    contents: Mapping[str, Snapshot] = field(default_factory=dict)

    def of(self, code: str) -> tuple[Copy, ...]:
        """Return the copies that carry a stamp."""
        return tuple(each for each in self.copies if each.code == code)
