"""A line to type in, whose keys act in the order in which they were pressed.

A binding acts later than the letters pressed after it: typed fast, or over a slow line, the figure
of one input would run into the next.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from textual import events
from textual.widgets import Input


class Field(Input):
    """An input line that does at once what its keys ask for."""

    def __init__(self, keys: Mapping[str, Callable[[], None]]) -> None:
        super().__init__(select_on_focus=False)
        self.keys = keys

    def on_key(self, event: events.Key) -> None:
        """Do what the key asks for, before any later key is looked at."""
        does = self.keys.get(event.key)
        if does is not None:
            event.stop()
            event.prevent_default()
            does()
