"""The form of a calculation: one field, and the inputs it goes through."""

from __future__ import annotations

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.form import Calculation, Input
from chamberwise.engine.working.given import tried
from chamberwise.engine.working.refusal import RefusedError
from chamberwise.engine.working.run import worked
from chamberwise.tui.actions import FORM
from chamberwise.tui.bindings import bindings
from chamberwise.tui.footer import footer
from chamberwise.tui.present.form_page import form_page, refused_page, working_page
from chamberwise.tui.present.parts import Part, laid_out
from chamberwise.tui.screens.panel import Panel
from chamberwise.tui.widgets.field import Field
from chamberwise.tui.widgets.foot import Foot
from chamberwise.tui.widgets.line import TwoEnds
from chamberwise.tui.widgets.prose import Prose
from chamberwise.tui.widgets.scrolling import Scrolling
from textual.app import ComposeResult
from textual.screen import Screen


class FormScreen(Screen[None]):
    """Asks for each input in turn; nothing is kept that cannot be used."""

    BINDINGS = bindings(FORM)

    def __init__(self, of: Calculation) -> None:
        super().__init__()
        self.of = of
        self.typed: dict[str, str] = {}
        self.chosen = 0
        self.title_line = TwoEnds(id="title")
        self.title_line.ends = (_(of.title), "")
        self.page = Scrolling(takes_arrows=False)
        self.said = Prose(id="said")
        self.field = Field(
            {
                "enter": self.action_take,
                "up": self.action_up,
                "down": self.action_down,
                "ctrl+g": self.action_work,
            }
        )

    def compose(self) -> ComposeResult:
        """Put the field under the inputs."""
        yield self.title_line
        yield self.page
        yield self.said
        yield self.field
        yield Foot(footer(FORM))

    def on_mount(self) -> None:
        """Type at once."""
        self.field.cursor_blink = False
        self.field.focus()
        self._ask()

    @property
    def asked(self) -> Input:
        """The input that is asked for."""
        return self.of.inputs[self.chosen]

    def tell(self) -> None:
        """Show the inputs, the chosen one in view."""
        self.page.show(form_page(self.of, self.typed, self.chosen), from_top=self.chosen == 0)
        self.call_after_refresh(self._into_view)

    def _into_view(self) -> None:
        parts = self.page.prose.parts
        width = max(8, self.page.prose.size.width)
        first = next(at for at, each in enumerate(parts) if each.answer == self.asked.name)
        above, whole = (len(laid_out(parts[:upto], width)) for upto in (first, first + 3))
        self.page.into_view(above, whole - 1)

    def _ask(self) -> None:
        self.field.value = self.typed.get(self.asked.name, "")
        self.field.placeholder = self.asked.example
        self.field.cursor_position = len(self.field.value)
        self.tell()

    def _keep(self) -> bool:
        """Keep what is in the field; whether it can be used, or is empty."""
        text = self.field.value.strip()
        if not text:
            self.typed.pop(self.asked.name, None)
            self.said.show([])
            return True
        try:
            remarks = tried(self.asked, text)
        except RefusedError as error:
            self.said.show([Part(str(each)) for each in error.refusals])
            return False
        self.typed[self.asked.name] = text
        self.said.show([Part(each) for each in remarks])
        return True

    def _move(self, by: int) -> None:
        if self._keep():
            self.chosen = max(0, min(len(self.of.inputs) - 1, self.chosen + by))
            self._ask()

    def action_up(self) -> None:
        """Go to the input above."""
        self._move(-1)

    def action_down(self) -> None:
        """Go to the input below."""
        self._move(1)

    def action_take(self) -> None:
        """Keep what was typed and go on; after the last input, work it."""
        if self.chosen == len(self.of.inputs) - 1:
            self.action_work()
        else:
            self._move(1)

    def action_work(self) -> None:
        """Show the working, or every reason against it."""
        if not self._keep():
            return
        self.tell()
        try:
            working = worked(self.of, self.typed)
        except RefusedError as error:
            self.app.push_screen(
                Panel(
                    _("{title}: refused").format(title=_(self.of.title)),
                    refused_page(error.refusals),
                )
            )
            return
        self.app.push_screen(Panel(_(self.of.title), working_page(working)))

    def on_prose_picked(self, event: Prose.Picked) -> None:
        """Go to the input that was clicked."""
        if self._keep():
            names = [each.name for each in self.of.inputs]
            self.chosen = names.index(event.answer)
            self._ask()

    def action_close(self) -> None:
        """Go back to the calculations."""
        self.dismiss()
