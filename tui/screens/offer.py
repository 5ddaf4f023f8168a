"""A walk was left unfinished: go on with it, or begin afresh."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.actions import OFFER
from chamberwise.tui.bindings import bindings
from chamberwise.tui.footer import footer
from chamberwise.tui.present.parts import GAP, Part, Tone
from chamberwise.tui.present.pathways import PathwayRow
from chamberwise.tui.widgets.foot import Foot
from chamberwise.tui.widgets.line import TwoEnds
from chamberwise.tui.widgets.prose import Prose
from textual.app import ComposeResult
from textual.screen import Screen

GO_ON, AFRESH, KEEP_OLD = "go on", "afresh", "keep the old record"


class OfferScreen(Screen[str | None]):
    """Hands back what was chosen, or nothing."""

    BINDINGS = bindings(OFFER)

    def __init__(self, row: PathwayRow) -> None:
        super().__init__()
        self.title_line = TwoEnds(id="title")
        self.title_line.ends = (row.title, "")
        assert row.unfinished is not None
        self.changed = row.unfinished.changed
        self.offers = (AFRESH, KEEP_OLD) if self.changed else (GO_ON, AFRESH)
        self.parts = _parts(row, self.offers)

    def compose(self) -> ComposeResult:
        """Put the choices under what they are about."""
        yield self.title_line
        yield Prose(self.parts)
        yield Foot(footer(OFFER, {"choose": "1-2"}))

    def action_choose(self, number: int) -> None:
        """Hand back what stands beside a number."""
        if number <= len(self.offers):
            self.dismiss(self.offers[number - 1])

    def on_prose_picked(self, event: Prose.Picked) -> None:
        """Hand back what was clicked."""
        self.dismiss(event.answer)

    def action_close(self) -> None:
        """Hand back nothing."""
        self.dismiss(None)


WORDS = {
    GO_ON: N_("Go on where it was left"),
    AFRESH: N_("Begin a fresh walk; the old one stays on disk"),
    KEEP_OLD: N_("Save the record of the old walk"),
}


def _parts(row: PathwayRow, offers: tuple[str, ...]) -> list[Part]:
    assert row.unfinished is not None
    parts = [Part(row.kept, "", Tone.STRONG)]
    parts += [Part(text) for text in (row.unfinished.changed, row.unfinished.torn) if text]
    parts.append(GAP)
    for number, offer in enumerate(offers, start=1):
        parts += [Part(_(WORDS[offer]), f" {number}  ", Tone.STRONG, Tone.KEY, offer), GAP]
    return parts
