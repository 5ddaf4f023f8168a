"""What a rule of the audit is: a limit, and a function that measures a sheet against it."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING, NamedTuple

from chamberwise.engine.language.languages import ENGLISH, LANGUAGES
from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.language.values import told
from chamberwise.exports.printing.kind import EVERY_KIND as EVERY_KIND
from chamberwise.exports.printing.kind import AnyKind

if TYPE_CHECKING:
    from chamberwise.exports.audit.subject import Subject

NEAR = 1e-6
EVERY_LANGUAGE = frozenset(LANGUAGES)
ENGLISH_ALONE = frozenset({ENGLISH.code})


class Severity(StrEnum):
    """How bad a finding is; an error stops an approved print."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


class Mark(StrEnum):
    """How sure a threshold is."""

    VERIFIED = "V"
    """Read in the source or a faithful copy of it."""
    MEMORY = "M"
    COMMON_PRACTICE = "CP"
    COMPUTED = "C"


class Where(NamedTuple):
    """A place on paper: page from 1, millimetres from top left, and the words there."""

    page: int = 0
    x: float = 0.0
    y: float = 0.0
    text: str = ""


EVERYWHERE = Where()


@dataclass(frozen=True, slots=True)
class Limit:
    """A floor or a ceiling; up to three steps of it. Equal to the limit is within it."""

    is_floor: bool
    unit: str
    error: float | None = None
    warning: float | None = None
    note: float | None = None

    def judge(self, value: float) -> Severity | None:
        """Return how bad a value is; `None` when it is within the limit."""
        steps = (
            (Severity.ERROR, self.error),
            (Severity.WARNING, self.warning),
            (Severity.NOTE, self.note),
        )
        for severity, bound in steps:
            if bound is not None and self._beyond(value, bound):
                return severity
        return None

    def rank(self, value: float) -> float:
        """Return a number that is larger the worse the value."""
        return -value if self.is_floor else value

    def _beyond(self, value: float, bound: float) -> bool:
        return value < bound - NEAR if self.is_floor else value > bound + NEAR

    @property
    def severity(self) -> Severity:
        """The worst it can come to."""
        if self.error is not None:
            return Severity.ERROR
        return Severity.NOTE if self.warning is None else Severity.WARNING

    def __str__(self) -> str:
        word = _("at least {bounds} {unit}") if self.is_floor else _("at most {bounds} {unit}")
        steps = (("error", self.error), ("warning", self.warning), ("note", self.note))
        said = [
            f"{decimal(f'{bound:g}')} ({told(name)})" for name, bound in steps if bound is not None
        ]
        return word.format(bounds=", ".join(said), unit=_(self.unit)).rstrip()


def at_least(
    unit: str, error: float | None = None, warning: float | None = None, note: float | None = None
) -> Limit:
    """Return a floor."""
    return Limit(True, unit, error, warning, note)


def at_most(
    unit: str, error: float | None = None, warning: float | None = None, note: float | None = None
) -> Limit:
    """Return a ceiling."""
    return Limit(False, unit, error, warning, note)


NO_FAULT = at_most(N_("faults"), error=0)
NO_FAULT_WARNED = at_most(N_("faults"), warning=0)


@dataclass(frozen=True, slots=True)
class Measure:
    """One thing measured. `told` is the value in words; `limit` replaces that of the rule."""

    value: float
    where: Where = EVERYWHERE
    told: str = ""
    limit: Limit | None = None


def counted(is_fault: bool, where: Where, told: str, limit: Limit | None = None) -> Measure:
    """Return a measure that counts as one fault or none."""
    return Measure(float(is_fault), where, told if is_fault else _("0 faults"), limit)


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule: what it limits, where the number comes from, and for which kinds of sheet."""

    id: str
    title: str
    limit: Limit
    source: str
    mark: Mark
    measure: Callable[[Subject], Iterable[Measure]]
    kinds: frozenset[AnyKind] = EVERY_KIND
    languages: frozenset[str] = EVERY_LANGUAGE
    """The languages, by code, in whose sheets it finds what it looks for."""
