"""Why a calculation gives no figure, and what to do."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Refusal:
    """What is wrong with an input, or with several, why it matters, and what to do next."""

    of: str
    what: str
    why: str
    fix: str
    is_outside: bool = False
    """Whether a number was read, and lies outside the range that is worked."""

    def __str__(self) -> str:
        return f"{self.what}. {self.why} {self.fix}"


class RefusedError(Exception):
    """No figure is given; every reason is told."""

    def __init__(self, refusals: Iterable[Refusal]) -> None:
        self.refusals = tuple(refusals)
        super().__init__("; ".join(each.what for each in self.refusals))


def refused(of: str, what: str, why: str, fix: str) -> RefusedError:
    """Return the one refusal as an error to raise."""
    return RefusedError((Refusal(of, what, why, fix),))
