"""The calculations a step refers to: how to work them, and their figures for a case of a brief."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.walk.walk import Walk


@dataclass(frozen=True, slots=True)
class FiguresView:
    """A calculation by title, the command that works it, and its figures or why there are none.

    Without a case there are no figures, and `of` is empty.
    """

    title: str
    command: str
    of: str
    figures: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CaseGiven:
    """A case of a brief by its label, and what was written of it by the names of inputs."""

    label: str
    written: Mapping[str, str]


def figures(walk: Walk, case: CaseGiven | None) -> tuple[FiguresView, ...]:
    """Return the calculations of the step stood on."""
    return tuple(_figures(walk.step.work, case))


def _figures(names: tuple[str, ...], case: CaseGiven | None) -> Iterator[FiguresView]:
    if not names:
        return
    from chamberwise.engine.working.refusal import RefusedError
    from chamberwise.engine.working.registry import NAMES, calculation
    from chamberwise.engine.working.run import worked

    for name in names:
        if name not in NAMES:
            continue
        of, command = calculation(name), f"chamberwise work {name}"
        if case is None:
            yield FiguresView(_(of.title), command, "", ())
            continue
        known = {each.name for each in of.inputs}
        typed = {key: text for key, text in case.written.items() if key in known}
        try:
            found = worked(of, typed, keeps_lines=False)
        except RefusedError as error:
            told = tuple(each.what for each in error.refusals)
        else:
            told = tuple(f"{_(each.title)}: {each.shown}" for each in found.results)
        yield FiguresView(_(of.title), command, _("case {label}").format(label=case.label), told)
