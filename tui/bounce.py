"""A key that bounces must not skip a step."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta

BOUNCE = timedelta(milliseconds=250)


@dataclass
class BounceGuard:
    """Remembers the key of the last move and when it was made."""

    key: str = ""
    at: datetime | None = None

    def lets_pass(self, key: str, now: datetime) -> bool:
        """Whether a key makes a move of its own: another key, or long enough after the last."""
        if self.at is not None and key == self.key and timedelta(0) <= now - self.at < BOUNCE:
            return False
        self.key, self.at = key, now
        return True
