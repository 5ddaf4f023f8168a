"""Sheets in which no rule finds anything, and the ways to spoil them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from functools import cache
from io import BytesIO
from typing import Any

from chamberwise.exports.audit.terms import Terms, Tiling
from chamberwise.exports.control.content import Control
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import (
    Arrow,
    Item,
    Outline,
    Page,
    Role,
    Run,
    Shape,
    Sheet,
    Style,
    Text,
    Tier,
    Weight,
)
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.printing.order import Kind
from chamberwise.exports.typesetting.compiling import to_pdf
from chamberwise.exports.typesetting.measuring import Ruler
from pypdf import PdfReader, PdfWriter
from pypdf.generic import DecodedStreamObject, NameObject

CONTROL = Control(
    title="Posterior capsule rupture",
    sheet="wall chart",
    document="posterior-capsule-rupture",
    edition="2",
    authors=("Clinical content lead",),
    approved_by="Surgical lead",
    approved_on=date(2026, 11, 1),
    reviewed=date(2026, 11, 1),
    review_by=date(2028, 11, 1),
    unit="Eye theatres",
    made=date(2026, 11, 25),
    code="7QK2-M4XP-3",
    modules=(),
)
FAR = "First actions are read from up to 1.87\u00a0m, steps from up to 0.96\u00a0m."
"""48 points: 0.5156 em are 8.73 mm, 16 minutes at 1.876 m. 24 points: 4.48 mm, at 0.962 m."""


@dataclass(frozen=True)
class Case:
    """A sheet, its file, its terms. Without a file it is made from the sheet."""

    sheet: Sheet
    terms: Terms
    file: bytes | None = None

    @property
    def pdf(self) -> bytes:
        return self.file if self.file is not None else to_pdf(self.sheet)

    @property
    def items(self) -> tuple[Item, ...]:
        return self.sheet.pages[0].items

    def with_items(self, items: tuple[Item, ...]) -> Case:
        page = replace(self.sheet.pages[0], items=items)
        return replace(self, sheet=replace(self.sheet, pages=(page, *self.sheet.pages[1:])))

    def and_also(self, *items: Item) -> Case:
        return self.with_items((*self.items, *items))

    def changed(self, words: str, **changes: Any) -> Case:
        """Return the sheet with the text that has these words changed."""
        return self._changed(lambda each: isinstance(each, Text) and words in each.text, changes)

    def reshaped(self, of: str, **changes: Any) -> Case:
        """Return the sheet with the shape of this name changed."""
        return self._changed(lambda each: isinstance(each, Shape) and each.of == of, changes)

    def redrawn(self, of: str, **changes: Any) -> Case:
        """Return the sheet with the arrow of this name changed."""
        return self._changed(lambda each: isinstance(each, Arrow) and each.of == of, changes)

    def _changed(self, is_meant: Callable[[Item], bool], changes: dict[str, Any]) -> Case:
        assert any(is_meant(each) for each in self.items)
        items = (replace(each, **changes) if is_meant(each) else each for each in self.items)
        return self.with_items(tuple(items))

    def under(self, **changes: Any) -> Case:
        """Return the case with other terms."""
        return replace(self, terms=replace(self.terms, **changes))

    def controlled(self, **changes: Any) -> Case:
        """Return the case with another document control, the paper as it was."""
        return self.under(control=replace(self.terms.control, **changes))

    def printed_as(self, other: Case) -> Case:
        """Return this sheet with the file of another: what was printed is not what was placed."""
        return replace(self, file=other.pdf)

    def edited(self, edit: Callable[[PdfWriter], None]) -> Case:
        """Return the case with its finished PDF edited."""
        writer = PdfWriter(clone_from=PdfReader(BytesIO(self.pdf)))
        edit(writer)
        out = BytesIO()
        writer.write(out)
        return replace(self, file=out.getvalue())

    def redrawn_file(self, change: Callable[[bytes], bytes]) -> Case:
        """Return the case with the drawing of its page changed in the finished PDF."""

        def edit(writer: PdfWriter) -> None:
            page = writer.pages[0]
            contents = page.get_contents()
            assert contents is not None
            stream = DecodedStreamObject()
            stream.set_data(change(contents.get_data()))
            page[NameObject("/Contents")] = writer._add_object(stream)

        return self.edited(edit)

    def repainted(self, *changes: tuple[bytes, bytes]) -> Case:
        """Return the case with stretches of that drawing replaced."""

        def change(drawing: bytes) -> bytes:
            for old, new in changes:
                assert old in drawing
                drawing = drawing.replace(old, new)
            return drawing

        return self.redrawn_file(change)


def text(words: str, x: float, y: float, size: float, role: Role, **more: Any) -> Text:
    """Return a text in one weight; its width and height are ample."""
    weight, ink = more.pop("weight", Weight.REGULAR), more.pop("ink", Ink.BLACK)
    width = more.pop("width", len(words) * size * 0.25)
    high = (words.count("\n") + 1) * size * 0.46
    style = Style(size, weight, ink, pitch=more.pop("pitch", 1.28))
    return Text(x, y, width, high, (Run(words),), style, role, **more)


def step(words: str, y: float = 215.0, **more: Any) -> Text:
    """Return one more instruction, where the chart is free."""
    return text(words, 200, y, 24, Role.STEP, width=205, **more)


@cache
def wall() -> Case:
    """Return a wall chart of one question."""
    sized = Sized(Paper.A3, Turn.LANDSCAPE)
    page = Frame(Ruler(), CONTROL, sized.format).page(_chart(), 1, 1, FAR)
    sheet = Sheet("Posterior capsule rupture", "Wall chart", "en", date(2026, 11, 25), (page,))
    return Case(sheet, Terms(Kind.WALL_CHART, sized, CONTROL, distance=1.5))


@cache
def card() -> Case:
    """Return something to hold in the hand."""
    sized = Sized(Paper.A4)
    items: tuple[Item, ...] = (
        Shape(Outline.PROCESS, 20, 30, 150, 30, weight=0.5),
        text("Keep the tip still", 30, 40, 14, Role.STEP),
    )
    page = Frame(Ruler(), CONTROL, sized.format).page(items, 1, 1, "")
    sheet = Sheet("Posterior capsule rupture", "Role card", "en", date(2026, 11, 25), (page,))
    return Case(sheet, Terms(Kind.ROLE_CARDS, sized, CONTROL))


@cache
def tiled() -> Case:
    """Return a tile with its label and marks to cut by."""
    marks = [((14.0 + x, 14.0), (14.0 + x, 20.0)) for x in (0, 180, 185, 190)]
    items = (
        text("Tile 1.1 of 1: Posterior capsule rupture", 20, 100, 10, Role.NOTE),
        *(Arrow(points, 0.3, has_head=False) for points in marks),
    )
    return replace(card().and_also(*items).under(tiling=Tiling(1, 1, 12.0)))


def blank(paper: Sized) -> Page:
    """Return an empty page."""
    return Page(paper.format, ())


def _chart() -> tuple[Item, ...]:
    first, act = {"tier": Tier.GLANCE}, {"tier": Tier.ACT}
    white = {"ink": Ink.WHITE, "weight": Weight.BOLD}
    return (
        text("Posterior capsule rupture", 12, 14, 48, Role.TITLE, **first),
        Shape(Outline.PANEL, 12, 36, 396, 24, Ink.DANGER, Ink.DANGER, 0),
        text("Do first", 18, 39, 48, Role.HEADING, **first, **white),
        Shape(Outline.PANEL, 12, 62, 396, 46, weight=0.8),
        text("Keep the tip still", 18, 66, 48, Role.STEP, **first),
        text("Lower the bottle", 18, 87, 48, Role.STEP, **first),
        Shape(Outline.PANEL, 12, 112, 396, 16, Ink.BLACK, Ink.CAUTION, 0.5),
        text("Traction pulls vitreous.", 18, 115, 24, Role.CAUTION, **act),
        Shape(Outline.DECISION, 20, 131, 150, 48, ground=Ink.DECISION_WASH, weight=0.6, of="p/q"),
        text("Is vitreous out?", 63, 150, 24, Role.QUESTION, **act, of="p/q"),
        Arrow(((95, 179), (95, 195)), 0.95, of="p/q/yes"),
        text("Yes", 99, 182, 24, Role.ANSWER, **act, of="p/q/yes"),
        Arrow(((170, 155), (240, 155)), 0.95, of="p/q/no"),
        text("No", 195, 143, 24, Role.ANSWER, **act, of="p/q/no"),
        Shape(Outline.PROCESS, 20, 195, 150, 40, weight=0.6, of="p/cut"),
        text("Cut vitreous with the\ncutter at the wound", 28, 203, 24, Role.STEP, of="p/cut"),
        Shape(Outline.TERMINATOR, 240, 140, 140, 30, weight=0.6, of="p/end"),
        text("Close the wound", 252, 150, 24, Role.STEP, of="p/end"),
        text("Draw up 0.5\u00a0mL of saline.", 240, 190, 10, Role.NOTE, tier=Tier.REFER),
    )
