"""Reading a list of reviewed mutants."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path, PurePath

from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading import codes, source_text
from chamberwise.engine.reading.form_reviewed import REVIEWED
from chamberwise.engine.reading.read import read
from chamberwise.engine.reading.tree import Tree, parse

FOLDER = "mutants"
"""Beside the pathways, so that their files are not taken for pathways."""

ANY_REST = "*"


@dataclass(frozen=True, slots=True)
class Reviewed:
    """One entry: a mutant's id, or how ids begin, and why the edit does no harm."""

    edit: str
    reason: str

    def covers(self, mutant: str) -> bool:
        """Whether it speaks of a mutant, by its id."""
        if self.edit.endswith(ANY_REST):
            return mutant.startswith(self.edit[: -len(ANY_REST)])
        return mutant == self.edit


@dataclass(frozen=True, slots=True)
class ReviewedList:
    """The entries of a file and every problem of its form."""

    entries: tuple[Reviewed, ...] = ()
    problems: tuple[Problem, ...] = ()

    def reason(self, mutant: str) -> str | None:
        """Return why a mutant does no harm, if an entry says so; the first one counts."""
        return next((each.reason for each in self.entries if each.covers(mutant)), None)


def reviewed_of(pathway_file: str, pathway: str) -> ReviewedList:
    """Return the list that lies beside a pathway's file; without one nothing is reviewed."""
    path = Path(PurePath(pathway_file).parent, FOLDER, f"{pathway}.yaml")
    return read_reviewed(path, pathway) if path.exists() else ReviewedList()


def read_reviewed(path: Path, pathway: str) -> ReviewedList:
    """Return the entries of a file and its problems, whatever it holds."""
    shown_as = str(path)
    text, problems = source_text.load(path, shown_as)
    problems = [*problems, *(source_text.refusals(text, shown_as) if text is not None else ())]
    if text is None or problems:
        return ReviewedList(problems=tuple(problems))
    tree = parse(text, shown_as)
    raw = read(tree, REVIEWED) or {}
    _named(tree, raw.get("mutants of", pathway), pathway)
    entries = tuple(
        Reviewed(each["edit"], each["reason"])
        for each in raw.get("reviewed", ())
        if each and "edit" in each and "reason" in each
    )
    return ReviewedList(entries, tuple(tree.problems))


def _named(tree: Tree, named: str, pathway: str) -> None:
    if named != pathway:
        at = ("mutants of",)
        message = _("the list is of `{named}` and lies where that of `{pathway}` belongs").format(
            named=named, pathway=pathway
        )
        advice = _("Rename the file to `{named}.yaml`, or write `{pathway}`.").format(
            named=named, pathway=pathway
        )
        tree.report(codes.FILE_NAME.at(tree.file, at, tree.span(at), message, advice))
