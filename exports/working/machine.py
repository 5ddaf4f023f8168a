"""A working as plain values for programs; figures are texts, so that no digit is lost."""

from __future__ import annotations

from typing import Any

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.form import STANDING, Calculation, Input
from chamberwise.engine.working.working import Heading, Line, Step, Working


def values(working: Working) -> dict[str, Any]:
    """Return everything a calculation says."""
    return {
        "calculation": working.name,
        "title": working.title,
        "standing": [_(each) for each in STANDING],
        "given": [
            {
                "name": each.name,
                "symbol": each.symbol or None,
                "meaning": each.meaning,
                "value": each.value,
                "assumed": each.assumed,
            }
            for each in working.given
        ],
        "results": [
            {
                "name": each.name,
                "title": each.title,
                "value": None if each.value is None else f"{each.value:f}",
                "shown": each.shown,
                "day": each.day.isoformat() if each.day else None,
            }
            for each in working.results
        ],
        "tables": [
            {
                "title": each.title,
                "rows": [dict(zip(each.keys, row, strict=True)) for row in each.rows],
            }
            for each in working.tables
        ],
        "working": [_line(each) for each in working.lines],
        "remarks": list(working.remarks),
        "does not know": list(working.limits),
        "cautions": list(working.cautions),
        "sources": [
            {
                "cite": each.cite,
                "mark": each.mark.value,
                "where": each.where or None,
                "note": each.note or None,
            }
            for each in working.sources
        ],
    }


def _line(line: Line | Heading | Step) -> dict[str, Any]:
    match line:
        case Heading(title=title):
            return {"part": title}
        case Step(text=said):
            return {"step": said}
        case _:
            return {
                "symbol": line.symbol,
                "title": line.title,
                "formula": line.formula,
                "numbers": line.numbers,
                "value": f"{line.value:f}",
                "unit": line.unit or None,
            }


def form(calculation: Calculation) -> dict[str, Any]:
    """Return what a calculation takes, for a program that asks for it."""
    return {
        "calculation": calculation.name,
        "title": calculation.title,
        "purpose": calculation.purpose,
        "inputs": [_input(each) for each in calculation.inputs],
    }


def _input(of: Input) -> dict[str, Any]:
    return {
        "name": of.name,
        "symbol": of.symbol or None,
        "meaning": of.meaning,
        "kind": of.kind.value,
        "unit": of.unit or None,
        "unit may be left out": of.bare if of.unit else None,
        "hard range": [f"{of.hard.low:f}", f"{of.hard.high:f}"] if of.hard else None,
        "usual range": [f"{of.soft.low:f}", f"{of.soft.high:f}"] if of.soft else None,
        "words": list(of.words) or None,
        "required": of.required,
        "taken if not said": of.given or None,
        "example": of.example,
    }
