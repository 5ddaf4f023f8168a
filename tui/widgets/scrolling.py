"""A scrolling body that says in words when there is more below."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from chamberwise.tui.present.parts import Part
from chamberwise.tui.widgets.prose import Prose
from textual.app import ComposeResult
from textual.containers import Vertical, VerticalScroll
from textual.content import Content
from textual.widgets import Static

MORE = "more below: press Down or Page Down"


class Scrolling(Vertical):
    """Prose that scrolls, with a line under it while part of it is out of view."""

    DEFAULT_CSS = """
    Scrolling { height: 1fr; }
    Scrolling > .more { height: 1; text-style: bold; visibility: hidden; }
    Scrolling > .more.there { visibility: visible; }
    """

    def __init__(
        self, parts: Sequence[Part] = (), *, takes_arrows: bool = True, **options: Any
    ) -> None:
        super().__init__(**options)
        self.prose = Prose(parts)
        self.pane = _Pane(self.prose, can_focus=takes_arrows)
        self.more = Static(Content(MORE), classes="more")

    def compose(self) -> ComposeResult:
        """Put the line under the pane."""
        yield self.pane
        yield self.more

    def show(self, parts: Sequence[Part], *, from_top: bool = True) -> None:
        """Show other parts, from their beginning unless told otherwise."""
        self.prose.show(parts)
        if from_top:
            self.pane.scroll_home(animate=False, immediate=True)
        self.call_after_refresh(self.tell)

    def tell(self) -> None:
        """Show or hide the line about more."""
        self.more.set_class(self.pane.max_scroll_y > self.pane.scroll_offset.y, "there")

    def on_resize(self) -> None:
        """Tell again at another size."""
        self.call_after_refresh(self.tell)


class _Pane(VerticalScroll):
    def watch_scroll_y(self, old_value: float, new_value: float) -> None:
        super().watch_scroll_y(old_value, new_value)
        if isinstance(self.parent, Scrolling):
            self.parent.tell()
