"""Faults planted in structure, flow and file."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from chamberwise.exports.audit.terms import Tiling
from chamberwise.exports.paper.sheet import (
    Arrow,
    Item,
    Outline,
    Role,
    Shape,
)
from pypdf import PdfWriter
from pypdf.generic import NameObject, RectangleObject

from tests.exports.audit.planted_words import Plant, without
from tests.exports.audit.sheets import Case, text


def no_first_box(case: Case) -> Case:
    return case.with_items(
        tuple(each for each in case.items if not (isinstance(each, Shape) and each.y == 62))
    )


def ten_items(case: Case) -> Case:
    places = [(205 + 40 * (n // 5), 182 + 9 * (n % 5)) for n in range(10)]
    lines = (text("Hold still", x, y, 14, Role.LINE) for x, y in places)
    return case.and_also(Shape(Outline.PANEL, 200, 180, 120, 60), *lines)


def two_pages(case: Case) -> Case:
    page = case.sheet.pages[0]
    return replace(case, sheet=replace(case.sheet, pages=(page, page)))


def boxes(count: int) -> Plant:
    """Add so many small boxes."""
    more = tuple(Shape(Outline.PROCESS, 200 + 7 * n, 220, 5, 5, of=f"p/{n}") for n in range(count))
    return lambda case: case.and_also(*more)


def answers(count: int) -> Plant:
    """Add so many answers to the question."""
    more = tuple(
        text(f"Answer {n}", 200, 180 + 9 * n, 14, Role.ANSWER, of=f"p/q/{n}") for n in range(count)
    )
    return lambda case: case.and_also(*more)


def second_question(case: Case) -> Case:
    """Add a question whose yes leaves to the right."""
    return case.and_also(
        Shape(Outline.DECISION, 200, 195, 60, 30, of="p/r"),
        text("Deep?", 215, 205, 14, Role.QUESTION, of="p/r"),
        Arrow(((260, 210), (300, 210)), 0.95, of="p/r/yes"),
        text("Yes", 270, 200, 14, Role.ANSWER, of="p/r/yes"),
        Arrow(((230, 225), (230, 240)), 0.95, of="p/r/no"),
        text("No", 235, 230, 14, Role.ANSWER, of="p/r/no"),
    )


def crossing(*points: tuple[float, float]) -> Plant:
    """Add an arrow; that to the right runs from 170 to 240 at 155."""
    return lambda case: case.and_also(Arrow(points, 0.95, of="p/x/y"))


def questions_in_a_row(case: Case) -> Case:
    found: list[Item] = []
    for n in range(4):
        found.append(Shape(Outline.DECISION, 200 + 50 * n, 200, 30, 20, of=f"p/{n}"))
        found.append(Arrow(((230 + 50 * n, 210), (250 + 50 * n, 210)), 0.95, of=f"p/{n}/yes"))
    return case.and_also(*found)


def many_arrows(case: Case) -> Case:
    more = (Arrow(((200 + n, 200), (300 + n, 170)), 0.95, of=f"p/x/{n}") for n in range(6))
    return case.and_also(*more)


def short_head(case: Case) -> Case:
    return case.redrawn("p/q/no", weight=0.5)


def misrouted(case: Case) -> Case:
    """Lead the arrow to the right further down, in the finished file: line and head."""
    line = (b"439.3701 m 669.54333 439.3701 l", b"439.3701 m 669.54333 469.3701 l")
    head = (
        b"680.31494 439.3701 m 666.8504 445.83307 l",
        b"680.31494 469.3701 m 666.8504 475.83307 l",
    )
    return case.repainted(line, head)


def full_page(case: Case) -> Case:
    words = "Hold the tip still " * 4
    return case.with_items(tuple(text(words, 14, 12 + 12.5 * n, 36, Role.LINE) for n in range(21)))


def off_the_page(case: Case) -> Case:
    return case.and_also(Shape(Outline.PROCESS, 380, 200, 60, 20, of="p/off"))


def unembedded(writer: PdfWriter) -> None:
    font = writer.pages[0]["/Resources"]["/Font"]["/f0"]  # type: ignore[index]
    del font["/DescendantFonts"][0].get_object()["/FontDescriptor"]["/FontFile2"]


def cropped(writer: PdfWriter) -> None:
    writer.pages[0][NameObject("/MediaBox")] = RectangleObject([0, 0, 1180, 841.89])


def without_language(writer: PdfWriter) -> None:
    del writer._root_object["/Lang"]


STRUCTURE: Mapping[str, Plant] = {
    "STR-04": no_first_box,
    "STR-05": ten_items,
    "STR-08": two_pages,
    "STR-09": off_the_page,
}

FLOW: Mapping[str, Plant] = {
    "FLO-01": lambda case: case.reshaped("p/q", outline=Outline.PROCESS),
    "FLO-02": without("Yes"),
    "FLO-03": answers(4),
    "FLO-04": second_question,
    "FLO-05": boxes(23),
    "FLO-06": crossing((205, 135), (205, 175)),
    "FLO-07": crossing((180, 150), (230, 160)),
    "FLO-08": crossing((200, 180), (220, 180), (220, 190), (240, 190), (240, 200)),
    "FLO-09": crossing((10, 180), (60, 210)),
    "FLO-10": crossing((240, 220), (240, 190)),
    "FLO-11": questions_in_a_row,
    "FLO-12": lambda case: many_arrows(
        case.and_also(Shape(Outline.PROCESS, 199, 200, 20, 20, of="p/many"))
    ),
    "FLO-16": lambda case: case.changed("Close the wound", x=241.0),
    "FLO-17": short_head,
    "FLO-18": full_page,
    "FLO-19": misrouted,
}

PRINTING: Mapping[str, Plant] = {
    "PRT-01": lambda case: case.edited(cropped),
    "PRT-02": lambda case: case.changed("Draw up", x=4.0),
    "PRT-04": lambda case: case.under(tiling=Tiling(2, 1, 12.0)),
    "PRT-05": lambda case: case.edited(unembedded),
    "PRT-06": lambda case: case.printed_as(without("Close the wound")(case)),
    "PRT-10": lambda case: case.edited(without_language),
    "PRT-12": lambda case: case.with_items(
        tuple(
            each
            for each in case.items
            if not (isinstance(each, Arrow) and each.points[-1][0] - each.points[0][0] == 100.0)
        )
    ),
}
