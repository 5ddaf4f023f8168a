"""What an audit found, and what it measured where it found nothing."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.language.texts import N_
from chamberwise.exports.audit.rule import Mark, Severity, Where

BASIS = N_(
    "Checked against rules derived from published human-factors material and common practice."
)
NO_CLAIM = N_("This is no statement that the sheet conforms to any standard.")


@dataclass(frozen=True, slots=True)
class Found:
    """One fault. `waived` is the reason for which it is let through."""

    rule: str
    title: str
    measured: str
    threshold: str
    severity: Severity
    where: Where
    mark: Mark
    waived: str = ""

    @property
    def stops(self) -> bool:
        """Whether an approved print must not go out."""
        return self.severity is Severity.ERROR and not self.waived


@dataclass(frozen=True, slots=True)
class Judged:
    """One rule over the whole sheet. `worst` is empty where there was nothing to measure."""

    rule: str
    title: str
    threshold: str
    severity: Severity
    source: str
    mark: Mark
    worst: str
    where: Where
    faults: int
    applies: bool = True
    is_searched: bool = True
    """Whether it looks for words of the language that the sheet is in."""


@dataclass(frozen=True, slots=True)
class Report:
    """All that was found and measured. `said` is about the terms themselves: void waivers."""

    sheet: str
    declared: tuple[str, ...]
    found: tuple[Found, ...]
    judged: tuple[Judged, ...]
    said: tuple[str, ...] = ()

    @property
    def errors(self) -> tuple[Found, ...]:
        """What stops an approved print."""
        return tuple(each for each in self.found if each.stops)

    @property
    def unmeasured(self) -> tuple[Judged, ...]:
        """The rules that nothing was held against, for they know no words of the language."""
        return tuple(each for each in self.judged if each.applies and not each.is_searched)

    def of(self, rule: str) -> tuple[Found, ...]:
        """Return what one rule found."""
        return tuple(each for each in self.found if each.rule == rule)
