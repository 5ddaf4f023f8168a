"""A digest short enough to be read aloud and compared by eye: 50 bits and two check letters."""

from __future__ import annotations

import json
from hashlib import sha256
from typing import Any

from chamberwise.engine.keys.base32 import BITS, written

SIGNS = 10


def short_digest(value: Any) -> str:
    """Return the digest of lists and texts.

    >>> short_digest(["steps", "fill"])
    'ZE6X-PR7Y-B0Q0'
    """
    told = json.dumps(value, ensure_ascii=False, separators=(",", ":"))
    number = int.from_bytes(sha256(told.encode()).digest())
    return written(number >> 256 - SIGNS * BITS, SIGNS)
