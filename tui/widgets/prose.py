"""Paragraphs on the screen, wrapped by the same rule as line mode."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from chamberwise.tui.present.parts import Part, Row, laid_out
from chamberwise.tui.widgets.tones import LOOKS
from textual import events
from textual.content import Content
from textual.geometry import Size
from textual.message import Message
from textual.widget import Widget


class Prose(Widget):
    """Shows parts. A click on a part that stands for an answer posts `Picked`."""

    DEFAULT_CSS = "Prose { height: auto; width: 1fr; }"

    class Picked(Message):
        """A part that stands for something was clicked."""

        def __init__(self, answer: str) -> None:
            self.answer = answer
            super().__init__()

    def __init__(self, parts: Sequence[Part] = (), **options: Any) -> None:
        super().__init__(**options)
        self.parts = list(parts)

    def show(self, parts: Sequence[Part]) -> None:
        """Show other parts."""
        if list(parts) != self.parts:
            self.parts = list(parts)
            self.refresh(layout=True)

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """Return the rows needed at a width."""
        return len(laid_out(self.parts, width))

    def render(self) -> Content:
        """Return the wrapped and toned text."""
        rows = laid_out(self.parts, self.size.width)
        return Content("\n").join(_content(row) for row in rows)

    def on_click(self, event: events.Click) -> None:
        """Tell which answer was clicked, if any."""
        rows = laid_out(self.parts, self.size.width)
        if 0 <= event.y < len(rows) and (answer := rows[event.y].part.answer) is not None:
            self.post_message(self.Picked(answer))


def _content(row: Row) -> Content:
    lead = row.lead.strip()
    before, _, after = row.lead.partition(lead) if lead else (row.lead, "", "")
    return Content.assemble(
        before, (lead, LOOKS[row.part.lead_tone]), after, (row.text, LOOKS[row.part.tone])
    )
