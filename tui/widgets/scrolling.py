"""A scrolling body that says in words when there is more below."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.present.parts import Part
from chamberwise.tui.widgets.prose import Prose
from textual.app import ComposeResult
from textual.containers import Vertical, VerticalScroll
from textual.content import Content
from textual.widgets import Static

MORE = N_("more below: press Down or Page Down")
ABOVE = N_("the rest is above: press Up or Page Up")


class Scrolling(Vertical):
    """Prose that scrolls, with a line under it while part of it is out of view."""

    DEFAULT_CSS = """
    Scrolling { height: 1fr; }
    Scrolling > .more { height: 1; text-style: bold; visibility: hidden; }
    Scrolling > .more.there { visibility: visible; }
    """

    def __init__(
        self,
        parts: Sequence[Part] = (),
        *,
        takes_arrows: bool = True,
        more: str = MORE,
        above: str = ABOVE,
        **options: Any,
    ) -> None:
        super().__init__(**options)
        self.laid_out = False
        """Whether what is shown has its place; until then nobody can have read it."""
        self.prose = Prose(parts)
        self.pane = _Pane(self.prose, can_focus=takes_arrows)
        self.how = self.said = _(more)
        self.above = _(above)
        self.more = Static(Content(self.how), classes="more")

    def compose(self) -> ComposeResult:
        """Put the line under the pane."""
        yield self.pane
        yield self.more

    def show(self, parts: Sequence[Part], *, from_top: bool = True) -> None:
        """Show other parts, from their beginning unless told otherwise."""
        self.prose.show(parts)
        if from_top:
            self.pane.scroll_home(animate=False, immediate=True)
        self.laid_out = self.laid_out and not from_top
        self.call_after_refresh(self._shown)

    def _shown(self) -> None:
        self.laid_out = True
        self.tell()

    def tell(self) -> None:
        """Say that there is more below or, at the end, that there is more above."""
        above = self.pane.scroll_offset.y > 0
        self._say(self.how if self.has_more or not above else self.above)
        self.more.set_class(self.has_more or above, "there")

    @property
    def has_more(self) -> bool:
        """Whether part of it is still below what is in view."""
        return self.pane.max_scroll_y > self.pane.scroll_offset.y

    def turn_page(self) -> None:
        """Go on by a screenful, the last line of this one staying in view."""
        ahead = max(1, self.pane.size.height - 1)
        self.pane.scroll_to(y=self.pane.scroll_offset.y + ahead, animate=False, immediate=True)

    def turn_back(self) -> None:
        """Go back by a screenful."""
        back = max(1, self.pane.size.height - 1)
        at = max(0, self.pane.scroll_offset.y - back)
        self.pane.scroll_to(y=at, animate=False, immediate=True)

    def into_view(self, first: int, last: int) -> None:
        """Scroll so that some rows of the text are in view, counted from 0."""
        top, height = self.pane.scroll_offset.y, self.pane.size.height
        if first < top:
            self.pane.scroll_to(y=first, animate=False, immediate=True)
        elif last >= top + height:
            self.pane.scroll_to(y=max(0, last + 1 - height), animate=False, immediate=True)

    def say_how(self, how: str) -> None:
        """Say other words in the line about more."""
        self.how = how
        self.tell()

    def _say(self, words: str) -> None:
        if words != self.said:
            self.said = words
            self.more.update(Content(words))

    def on_resize(self) -> None:
        """Tell again at another size."""
        self.call_after_refresh(self.tell)


class _Pane(VerticalScroll):
    def watch_scroll_y(self, old_value: float, new_value: float) -> None:
        super().watch_scroll_y(old_value, new_value)
        if isinstance(self.parent, Scrolling):
            self.parent.tell()
