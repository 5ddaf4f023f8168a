"""Units' sheets found in some folders, and the library as the unit of one of them has it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from pathlib import Path

from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.local.finding import sheets_in, with_base_beside
from chamberwise.engine.local.localising import localised
from chamberwise.engine.model.pathway import Status
from chamberwise.engine.reading.library import File, Loaded, load_library
from chamberwise.engine.reading.nodes import node_at
from chamberwise.engine.reading.tree import Scalar
from chamberwise.tui.command.finding_files import shipped
from chamberwise.tui.in_language import in_language
from chamberwise.tui.setting import Setting

DEMONSTRATION = "demonstration"
"""Beside the pathways that come along: the sheet of an invented unit."""


@dataclass(frozen=True, slots=True)
class Unit:
    """A sheet that was found, as its head has it; what cannot be read of it is empty.

    A status of `approved` is said where the approval stands, else the sheet is a draft.
    """

    file: File
    unit: str
    over: str
    edition: str
    status: str


def units_in(folders: Iterable[Path], base: Loaded) -> tuple[Unit, ...]:
    """Return the units whose sheets lie in some folders; `base` is what they lie over."""
    return tuple(_unit(file, base) for file in sheets_in(folders))


def _unit(file: File, base: Loaded) -> Unit:
    local = file.sheet.local if file.sheet else None
    unit, over = (local.unit, local.over) if local else ("", "")
    return Unit(file, unit, over, _said(file, "edition"), _status(file, over, base))


def _status(file: File, over: str, base: Loaded) -> str:
    said = _said(file, "status")
    if said not in {*Status}:
        return ""
    if said == Status.APPROVED:
        pathways = localised(with_base_beside(base, file), file).library.pathways
        stands = over in pathways and pathways[over].is_approved
        return str(Status.APPROVED if stands else Status.DRAFT)
    return said


def _said(file: File, key: str) -> str:
    node = node_at(file.tree.root, (key,))
    return " ".join(node.text.split()) if isinstance(node, Scalar) else ""


def under(setting: Setting, file: File) -> Setting | tuple[Problem, ...]:
    """Return the setting under a unit's sheet, or the errors for which it is not carried out."""
    base = with_base_beside(base_of(setting), file)
    loaded = localised(base, file)
    if loaded.library.local is None:
        problems = loaded.files[file.shown_as].problems
        return tuple(each for each in problems if each.severity is Severity.ERROR)
    return replace(setting, loaded=in_language(loaded, setting.library or shipped()), base=base)


def without_unit(setting: Setting) -> Setting:
    """Return the setting with the pathways as they come along."""
    base = base_of(setting)
    return replace(setting, loaded=in_language(base, setting.library or shipped()), base=base)


def base_of(setting: Setting) -> Loaded:
    """Return the pathways as they come along, in English."""
    if setting.base is not None:
        return setting.base
    is_as_it_came = setting.loaded.library.local is None and setting.loaded.written is None
    return setting.loaded if is_as_it_came else load_library(setting.library or shipped())
