"""What stands on a brief, said once for the page, the text and the reader."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

NOT_SET = N_("NOT SET LOCALLY")
TITLE = N_("Brief before the list")
BY_HAND = N_("Check by hand against the unit's own biometry and formulary.")
USE = N_(
    "{by_hand} Follow local protocol. For rehearsal and preparation, never live care. "
    "Not for consent."
)
AGE_OF_RISK = N_("Risk: odds ratios of 2009; ruptures have about halved since.")
HABIT = N_(
    "In the room for every case: vitrectomy pack, backup lens, triamcinolone. That, and "
    "what to have open, is common practice; the unit's own list goes first."
)
POWERS = N_(
    "After an exact power: what is near it on the shelf, how many there are, and what each leaves."
)
LIDOCAINE = N_("2 % is 20 mg/mL; every route counts.")
NO_IDENTITY = N_("Case labels only. Destroy after the list.")


@dataclass(frozen=True, slots=True)
class BackupLine:
    """A backup lens in a position: the exact power, how, other figures, what is on the shelf."""

    position: str
    lens: str
    power: str
    way: str
    beside: str
    shelf: tuple[tuple[str, str, str], ...]
    """What is near: the power, how many there are, and what it would leave."""
    refused: str
    is_missing: bool


@dataclass(frozen=True, slots=True)
class CaseLine:
    """What is told of one case."""

    label: str
    eye: str
    anaesthesia: str
    risk: str
    points: tuple[str, ...]
    ready: tuple[str, ...]
    planned: str
    backups: tuple[BackupLine, ...]
    ceiling: str
    to_do: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BriefContent:
    """The sheet. `people` are who reads aloud, who takes over, and the stop word."""

    title: str
    unit: str
    day: str
    counted: str
    chance: str
    people: tuple[tuple[str, str], ...]
    to_do: tuple[str, ...]
    cases: tuple[CaseLine, ...]

    @property
    def remarks(self) -> tuple[str, ...]:
        """What has to be known of the sheet and its figures."""
        return (_(USE).format(by_hand=_(BY_HAND)), *self.of_figures)

    @property
    def of_figures(self) -> tuple[str, ...]:
        """The same without what stands at the foot of every printed page."""
        counted = (
            _(" Shelf counted {counted}.").format(counted=self.counted) if self.counted else ""
        )
        return (_(AGE_OF_RISK), _(POWERS), _(LIDOCAINE), _(HABIT), f"{_(NO_IDENTITY)}{counted}")
