"""A stamp, or the register, as plain values."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from chamberwise.exports.stamp.content import CopyShown, StampShown


def stamp_values(shown: StampShown) -> dict[str, Any]:
    """Return one stamp."""
    return {
        "stamp": shown.code,
        "worth": str(shown.worth),
        "pathway": shown.pathway or None,
        "title": shown.title or None,
        "sheet": shown.sheet or None,
        "edition": shown.edition or None,
        "now": shown.now or None,
        "changed": list(shown.changed),
        "said": list(shown.said),
        "copies": register_values(shown.copies),
    }


def register_values(copies: Sequence[CopyShown]) -> list[dict[str, Any]]:
    """Return the copies."""
    return [
        {
            "stamp": copy.code,
            "worth": str(copy.worth),
            "title": copy.title,
            "sheet": copy.sheet,
            "paper": copy.paper or None,
            "edition": copy.edition,
            "printed": copy.printed.isoformat(),
            "hangs": copy.hangs or None,
        }
        for copy in copies
    ]
