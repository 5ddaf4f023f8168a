"""Exit statuses, the same for every command."""

from __future__ import annotations

from enum import IntEnum


class Status(IntEnum):
    """How a command ended."""

    CLEAN = 0
    FINDINGS = 1
    UNUSABLE = 2
    UNPROVEN = 3
    INTERRUPTED = 130
