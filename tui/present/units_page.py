"""The units whose sheets were found, as paragraphs to choose from."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.diagnostics.text import place
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.present.parts import GAP, Part, Tone
from chamberwise.tui.present.words import status_word
from chamberwise.tui.units import Unit

MOST = 8
"""Errors that are told on one page."""
NO_UNIT = "no unit"
"""What is handed back for the pathways as they come along."""


def units_page(units: Sequence[Unit], chosen: int) -> list[Part]:
    """Return the pathways as they come along, then each unit; the chosen one is marked."""
    parts = [*_entry(_("No unit: the pathways as they come along"), "", NO_UNIT, chosen == 0)]
    for number, each in enumerate(units, start=1):
        name = each.unit or _("A sheet that cannot be read")
        parts += _entry(name, _told(each), each.file.shown_as, chosen == number)
    if not units:
        none = _(
            "No local sheet was found. `chamberwise new NAME --over ID --unit UNIT` writes one; "
            "`chamberwise --sheets DIR` looks in another folder."
        )
        parts.append(Part(none, "  "))
    return parts


def not_carried_out(unit: Unit, problems: Sequence[Problem]) -> list[Part]:
    """Return why a sheet is not carried out, each error with its line and what to do."""
    told = (f"{place(each.file, each.span)}: {each.message}. {each.advice}" for each in problems)
    parts = [Part(each) for each in told]
    said = _("Put this right first: `chamberwise check {file}` shows the lines.")
    return [*parts[:MOST], GAP, Part(said.format(file=unit.file.shown_as))]


def beside_a_sheet(file: str) -> list[Part]:
    """Return how a unit's sheet is written: in an editor, its problems told at every save."""
    told = _(
        "A unit's sheet is written in any text editor. `chamberwise check {file} --watch` tells "
        "its problems at every save; choose the unit again with u to see what became of it."
    )
    return [Part(told.format(file=file))]


def _entry(name: str, told: str, answer: str, is_chosen: bool) -> list[Part]:
    lead = "> " if is_chosen else "  "
    parts = [Part(name, lead, Tone.STRONG, Tone.KEY, answer)]
    if told:
        parts.append(Part(told, "    ", answer=answer))
    return [*parts, GAP]


def _told(unit: Unit) -> str:
    if not unit.over:
        return _("{file}: `chamberwise check {file}` says why.").format(file=unit.file.shown_as)
    told = [
        _("edition {edition}").format(edition=unit.edition) if unit.edition else "",
        status_word(unit.status) if unit.status else "",
        _("over {pathway}").format(pathway=unit.over),
    ]
    return f"{unit.file.shown_as}: {', '.join(filter(None, told))}"
