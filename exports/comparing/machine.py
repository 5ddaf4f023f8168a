"""Comparisons as plain values, for a program to read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict
from typing import Any

from chamberwise.exports.comparing.content import ComparisonShown
from chamberwise.exports.stamp.machine import register_values

FORMAT = 1


def comparison_values(shown: Sequence[ComparisonShown]) -> dict[str, Any]:
    """Return every comparison, and whether nothing changed in any."""
    return {
        "format": FORMAT,
        "same": not any(each.changes for each in shown),
        "comparisons": [_values(each) for each in shown],
    }


def _values(shown: ComparisonShown) -> dict[str, Any]:
    return {**asdict(shown), "take_down": register_values(shown.take_down)}
