"""Checking at every save: when files changed and lie still, and what stands of the time before."""

from __future__ import annotations

import time
from argparse import Namespace
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from chamberwise.engine.reading.again import Again
from chamberwise.tui.command.finding_files import is_path, shipped
from chamberwise.tui.drafting import Stamps, stamps

if TYPE_CHECKING:
    from chamberwise.engine.local.blaming import Below
    from chamberwise.engine.reading.library import Loaded

SECONDS_BETWEEN_LOOKS = 0.05
OF_A_LIBRARY = ("*.yaml", "vocabulary/*.yaml", "drills/*.yaml", "translations/*/*.yaml")


@dataclass(slots=True)
class Watching:
    """What stands of the time before: the files as read, and what is wrong below a sheet."""

    read: Again = field(default_factory=Again)
    _below: Below | None = None

    def below(self, base: Loaded, shown: tuple[str, ...], today: date) -> Below:
        """Return a library without a sheet, the same as before where it is the same library."""
        from chamberwise.engine.local.blaming import below_again

        self._below = below_again(self._below, base, shown, today)
        return self._below


def lying(arguments: Namespace, read: Again) -> Stamps:
    """Return how every file lies there that a check of what was typed reads, or read before."""
    return stamps(dict.fromkeys((*_paths(arguments), *read.paths)))


def after_a_save(arguments: Namespace, read: Again, before: Stamps) -> Stamps:
    """Wait until files lie otherwise than before, and still; return how they lie then."""
    last = before
    while True:
        now = lying(arguments, read)
        if now == last != before:
            return now
        last = now
        time.sleep(SECONDS_BETWEEN_LOOKS)


def _paths(arguments: Namespace) -> Iterator[Path]:
    folder = arguments.library or shipped()
    for pattern in OF_A_LIBRARY:
        yield from sorted(folder.glob(pattern))
    yield from (Path(name) for name in arguments.names if is_path(name))
    if arguments.local:
        yield arguments.local
