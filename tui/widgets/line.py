"""One line with text at both ends, cut to the width there is."""

from __future__ import annotations

from typing import Any

from chamberwise.tui.present.arrange import two_ends
from textual.content import Content
from textual.widget import Widget


class TwoEnds(Widget):
    """Text at the left and at the right; the right end is never cut."""

    DEFAULT_CSS = "TwoEnds { height: 1; width: 1fr; }"

    def __init__(self, **options: Any) -> None:
        super().__init__(**options)
        self.ends = ("", "")

    def show(self, left: str, right: str) -> None:
        """Show other text."""
        if (left, right) != self.ends:
            self.ends = (left, right)
            self.refresh()

    def render(self) -> Content:
        """Return the line."""
        return Content(two_ends(*self.ends, self.size.width))
