"""What stands on a brief, said once for the page, the text and the reader."""

from __future__ import annotations

from dataclasses import dataclass

NOT_SET = "NOT SET LOCALLY"
TITLE = "Brief before the list"
USE = (
    "Check by hand against the unit's own biometry and formulary. Follow local protocol. "
    "For rehearsal and preparation, never live care; not for consent."
)
AGE_OF_RISK = (
    "Risk: odds ratios of 2009 (from memory, read in a second place); ruptures have about halved "
    "since. Unknown never counts as absent."
)
HABIT = "What to have open is common practice; the unit's own list goes first."
SULCUS = "Powers: SRK/T with each lens's own constant; to the sulcus by vergence, 0.5 and 0.75 mm."
NO_IDENTITY = "Case labels only. Destroy after the list."
IN_THE_ROOM = "In the room for every case: vitrectomy pack, backup lens, triamcinolone."


@dataclass(frozen=True, slots=True)
class BackupLine:
    """A backup lens in a position: the exact power with how, and what is on the shelf."""

    position: str
    lens: str
    power: str
    shelf: str
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
        """What has to be known of the figures."""
        counted = f" Shelf counted {self.counted}." if self.counted else ""
        return (USE, AGE_OF_RISK, SULCUS, HABIT, f"{NO_IDENTITY}{counted}")
