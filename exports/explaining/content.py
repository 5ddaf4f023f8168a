"""One diagnostic explained, as plain values."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Explained:
    """What it is, why it matters, and an example either way.

    `of` says who reports it: `check`, the wording rules of `check`, or the audit of `print`.
    """

    code: str
    of: str
    severity: str
    title: str
    why: str
    wrong: str
    right: str
    source: str = ""
