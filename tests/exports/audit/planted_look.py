"""Faults planted in how a sheet looks: legibility and colour."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from chamberwise.exports.audit.terms import Lighting
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import (
    Align,
    Outline,
    Role,
    Run,
    Shape,
    Weight,
)
from pypdf import PdfWriter
from pypdf.generic import FloatObject, NameObject, NumberObject

from tests.exports.audit.planted_words import LONG, Plant, note, says, without
from tests.exports.audit.sheets import Case, step

RED, YELLOW, BLACK = b"0.6392157 0.08235294 0.08235294", b"1 0.83137256 0", b"0 0 0"


def styled(words: str, **style: object) -> Plant:
    """Set the text with these words otherwise."""

    def plant(case: Case) -> Case:
        found = next(each for each in case.sheet.pages[0].texts if words in each.text)
        return case.changed(words, style=replace(found.style, **style))

    return plant


def font_told(key: str, value: float) -> Plant:
    """Change what the finished PDF's first font says of itself."""

    def edit(writer: PdfWriter) -> None:
        font = writer.pages[0]["/Resources"]["/Font"]["/f0"]  # type: ignore[index]
        under = font["/DescendantFonts"][0].get_object()["/FontDescriptor"]
        kept = NumberObject(value) if key == "/Flags" else FloatObject(value)
        under[NameObject(key)] = kept

    return lambda case: case.edited(edit)


def mostly_bold(case: Case) -> Case:
    for words in ("Keep the tip", "Lower", "Is vitreous", "Cut vitreous", "Close", "Posterior"):
        case = styled(words, weight=Weight.BOLD)(case)
    return case.and_also(step("Hold " * 12 + "still", weight=Weight.BOLD, y=180))


def on_ground(words: str, ink: Ink, ground: Ink) -> Plant:
    """Add words in an ink on a ground."""

    def plant(case: Case) -> Case:
        panel = Shape(Outline.PANEL, 195, 210, 200, 18, ground, ground, 0)
        return case.and_also(panel, step(words, ink=ink))

    return plant


def silent_panel(case: Case) -> Case:
    return case.and_also(Shape(Outline.PANEL, 200, 215, 60, 12, Ink.DANGER, Ink.DANGER, 0))


def many_colours(case: Case) -> Case:
    """Paint one caution in place of another, four times over, in the finished PDF."""
    panels = [Shape(Outline.PANEL, 200 + 12 * n, 215, 10, 10, ground=Ink.CAUTION) for n in range(4)]
    painted = [b"0 0.5 0 scn", b"0.2 0 0.9 scn", b"0.9 0 0.9 scn", b"0 0.7 0.9 scn"]
    case = case.and_also(*panels)
    drawing = b"\n".join([YELLOW + b" scn"])

    def edit(data: bytes) -> bytes:
        for colour in painted:
            data = data.replace(drawing, colour, 1)
        return data

    return case.redrawn_file(edit)


LEGIBILITY: Mapping[str, Plant] = {
    "LEG-01": styled("Keep the tip", size=36),
    "LEG-02": styled("Keep the tip", size=44),
    "LEG-03": styled("Do first", size=36),
    "LEG-04": styled("Keep the tip", size=84),
    "LEG-05": styled("Keep the tip", size=9),
    "LEG-06": styled("Draw up", size=8),
    "LEG-07": styled("Keep the tip", size=44),
    "LEG-08": lambda case: styled("Keep the tip", size=40)(case.under(lighting=Lighting.DIM)),
    "LEG-09": lambda case: case.redrawn("p/q/no", weight=0.2),
    "LEG-10": lambda case: case.changed(
        "1.87",
        runs=(Run("Read from up to 2.05\u00a0m, steps from up to 0.96\u00a0m."),),
    ),
    "LEG-11": styled("Cut vitreous", pitch=1.1),
    "LEG-12": note(LONG[:72], Role.STEP),
    "LEG-13": styled("Cut vitreous", align=Align.CENTRE),
    "LEG-14": font_told("/Flags", 131076 | 2),
    "LEG-15": says("STOP AND CALL FOR HELP NOW"),
    "LEG-16": font_told("/ItalicAngle", -12),
    "LEG-17": mostly_bold,
    "LEG-18": lambda case: case.printed_as(without("tt")(case)),
}

COLOUR: Mapping[str, Plant] = {
    "COL-01": on_ground("Call for help", Ink.RULE, Ink.WHITE),
    "COL-02": on_ground("Call for help", Ink.RULE, Ink.WHITE),
    "COL-03": lambda case: case.redrawn("p/q/no", ink=Ink.DECISION_WASH),
    "COL-04": silent_panel,
    "COL-05": lambda case: case.repainted((YELLOW, b"0.72 0.10 0.10")),
    "COL-06": lambda case: case.repainted((RED, b"0.8 0 0"), (YELLOW, b"0 0.5019608 0")),
    "COL-07": lambda case: case.repainted((YELLOW, b"0 0.32549 0.52941")),
    "COL-08": on_ground("Call for help", Ink.RULE, Ink.WHITE),
    "COL-09": many_colours,
    "COL-10": on_ground("Hold still", Ink.BLACK, Ink.CAUTION),
    "COL-11": on_ground("Hold still", Ink.BLACK, Ink.DANGER),
    "COL-12": on_ground("Hold still", Ink.BLACK, Ink.DANGER),
    "COL-13": on_ground("Hold still", Ink.WHITE, Ink.DANGER),
}
