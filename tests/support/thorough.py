"""A few cases as a rule, and all of them with CHAMBERWISE_TESTS=thorough."""

from __future__ import annotations

import os
from collections.abc import Iterable
from typing import TypeVar

THOROUGH = os.environ.get("CHAMBERWISE_TESTS") == "thorough"

Case = TypeVar("Case")


def cases(few: Iterable[Case], more: Iterable[Case]) -> list[Case]:
    """Return the cases that are always tried and, where tests are thorough, the others too."""
    return [*few, *(more if THOROUGH else ())]
