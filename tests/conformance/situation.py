"""One situation: what is found, and what a careful surgeon then does and leaves undone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from tests.conformance.driver import CLOSING, DROPPED, RUPTURE, VITRECTOMY, Walk, walk

NO_LENS_YET = "none, optic-captured"


@dataclass(frozen=True)
class Situation:
    """`does` are acts in this order, others may lie between; `never` are acts left undone."""

    says: str
    found: Mapping[str, str]
    ends: str
    lens: str = ""
    """The last lens plan begins with this."""
    does: str = ""
    never: str = ""
    entry: str = RUPTURE
    plans: str = ""
    """Words that the plan for nucleus or vitreous holds."""
    cuts: int | None = None
    """How many rounds vitreous is cut in, where that is the point."""

    def walk(self) -> Walk:
        return walk(self.found, self.entry)

    def faults(self) -> list[str]:
        """Return how the walk differs from what is expected."""
        walked = self.walk()
        faults = [f"ends {walked.outcome}"] if walked.outcome != self.ends else []
        lens = (walked.plans.get("lens") or [""])[-1]
        if self.lens and not lens.startswith(self.lens):
            faults.append(f"lens plan {lens!r}")
        if missing := _first_missing(self.does.split(), walked.acts + walked.owed):
            faults.append(f"does not come to {missing}")
        faults += [f"does {act}" for act in self.never.split() if act in walked.acts]
        cuts = walked.acts.count("cut-vitreous")
        faults += [f"cuts in {cuts} rounds"] if self.cuts not in (None, cuts) else []
        told = walked.plan("nucleus") + "; " + walked.plan("vitreous")
        return faults + ([f"plans {told!r}"] if self.plans not in told else [])


def _first_missing(wanted: list[str], done: list[str]) -> str:
    rest = iter(done)
    return next((act for act in wanted if act not in rest), "")


def rupture(says: str, found: Mapping[str, str], ends: str, **expected: Any) -> Situation:
    """Return a situation that begins in the rupture pathway."""
    return Situation(says, found, ends, **expected)


def dropped(says: str, found: Mapping[str, str], ends: str, **expected: Any) -> Situation:
    """Return a situation that begins in the dropped nucleus pathway, in an eye without a lens."""
    return Situation(says, {"lens": NO_LENS_YET} | dict(found), ends, entry=DROPPED, **expected)


def vitrectomy(says: str, found: Mapping[str, str], ends: str, **expected: Any) -> Situation:
    """Return a situation that begins in the vitrectomy pathway."""
    return Situation(says, found, ends, entry=VITRECTOMY, **expected)


def closing(says: str, found: Mapping[str, str], ends: str, **expected: Any) -> Situation:
    """Return a situation that begins at closing."""
    return Situation(says, found, ends, entry=CLOSING, **expected)
