"""The foot of every screen: what this is for, and what the keys do."""

from __future__ import annotations

from chamberwise.exports.flow.holding import unparted
from chamberwise.tui.present.parts import Part
from chamberwise.tui.present.standing import standing
from chamberwise.tui.widgets.prose import Prose
from textual.app import ComposeResult
from textual.containers import Vertical


class Foot(Vertical):
    """The standing line over the keys of the screen."""

    DEFAULT_CSS = "Foot { dock: bottom; height: auto; }"

    def __init__(self, keys: str) -> None:
        super().__init__()
        self.keys = Prose([Part(_unparted(keys))], classes="keys")

    def compose(self) -> ComposeResult:
        """Put the standing line over the keys."""
        yield Prose([Part(standing())], classes="standing")
        yield self.keys

    def show(self, keys: str) -> None:
        """Show other keys."""
        self.keys.show([Part(_unparted(keys))])


def _unparted(keys: str) -> str:
    """Return the keys so that no line end parts one from its word."""
    return "  ".join(unparted(each) for each in keys.split("  "))
