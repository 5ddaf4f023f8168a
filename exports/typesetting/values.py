"""Placed sheets as the plain values that the drawing reads."""

from __future__ import annotations

from typing import Any

from chamberwise.exports.paper.sheet import (
    Arrow,
    Code,
    Item,
    Page,
    Run,
    Shape,
    Sheet,
    Style,
    Text,
    Weight,
)


def sheet_values(sheet: Sheet) -> dict[str, Any]:
    """Return a sheet as one mapping."""
    made = sheet.made
    return {
        "title": sheet.title,
        "subject": sheet.subject,
        "language": sheet.language,
        "made": {"year": made.year, "month": made.month, "day": made.day},
        "pages": [_page(each) for each in sheet.pages],
    }


def style_values(style: Style, runs: tuple[Run, ...]) -> dict[str, Any]:
    """Return how a text is set, and its words."""
    return {
        "size": style.size,
        "ink": style.ink.value,
        "align": style.align.value,
        "pitch": style.pitch,
        "runs": [{"text": run.text, "weight": weight_of(run, style).value} for run in runs],
    }


def weight_of(run: Run, style: Style) -> Weight:
    """A run that asks for no weight of its own has that of its text."""
    return run.weight if run.weight is not Weight.REGULAR else style.weight


def _page(page: Page) -> dict[str, Any]:
    width, height = page.format
    return {"width": width, "height": height, "items": [_item(each) for each in page.items]}


def _item(item: Item) -> dict[str, Any]:
    match item:
        case Text():
            place = {"x": item.x, "y": item.y, "width": item.width, "turned": item.turned}
            return {"is": "text", "role": item.role.value, **place} | style_values(
                item.style, item.runs
            )
        case Shape():
            return {
                "is": "shape",
                "outline": item.outline.value,
                "x": item.x,
                "y": item.y,
                "width": item.width,
                "height": item.height,
                "border": item.border.value,
                "ground": item.ground.value,
                "weight": item.weight,
            }
        case Arrow():
            return {
                "is": "arrow",
                "points": item.points,
                "weight": item.weight,
                "ink": item.ink.value,
                "head": item.has_head,
                "dashed": item.is_dashed,
            }
        case Code():
            return {
                "is": "code",
                "x": item.x,
                "y": item.y,
                "side": item.side,
                "rows": item.rows,
                "alternative": item.alternative,
            }
