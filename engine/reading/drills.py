"""Reading the folder of drills: books of scenarios, what acts do to the truth, and phrases."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from hashlib import sha256
from pathlib import Path
from typing import Any

from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.drill import DrillBook, Phrases, TruthBook
from chamberwise.engine.reading import build_drill, codes, source_text
from chamberwise.engine.reading.digest import digest
from chamberwise.engine.reading.form_drill import DRILL, PHRASES, TRUTH
from chamberwise.engine.reading.library import Loaded, shown
from chamberwise.engine.reading.read import read
from chamberwise.engine.reading.shapes import Record
from chamberwise.engine.reading.tree import Tree, parse

FOLDER = "drills"
"""Beside the pathways, so that its files are not taken for pathways."""

TRUTH_FILE = "truth.yaml"
PHRASES_FILE = "phrases.yaml"


@dataclass(frozen=True, slots=True)
class DrillFile:
    """One file as read: its text, its tree, and the problems of its form in it."""

    shown_as: str
    text: str
    tree: Tree

    @property
    def is_whole(self) -> bool:
        """Whether everything in it could be read."""
        return not any(each.severity is Severity.ERROR for each in self.tree.problems)


@dataclass(frozen=True, slots=True)
class Drills:
    """Every book by its pathway, with the truth and the phrases they share."""

    books: Mapping[str, DrillBook] = field(default_factory=dict)
    truth: TruthBook = field(default_factory=TruthBook)
    phrases: Phrases = field(default_factory=Phrases)
    files: Mapping[str, DrillFile] = field(default_factory=dict)
    """By the file's name without its folder."""
    written: Drills | None = None
    """The drills as they were written, where these have their texts in another language."""
    in_english: Mapping[str, tuple[int, int]] = field(default_factory=dict)
    """By book, how many of its texts stand in English all the same, and of how many."""

    @property
    def problems(self) -> list[Problem]:
        """Every problem of form, file by file."""
        return [problem for file in self.files.values() for problem in file.tree.problems]

    @property
    def texts(self) -> dict[str, str]:
        """The files' texts by path, for showing lines."""
        return {file.shown_as: file.text for file in self.files.values()}

    def file_of(self, pathway: str) -> DrillFile:
        """Return the file of a book."""
        return self.files[f"{pathway}.yaml"]


def read_drills(library: Path) -> Drills:
    """Return the drills that lie beside a folder of pathways, whatever the files hold."""
    books: dict[str, DrillBook] = {}
    files: dict[str, DrillFile] = {}
    truth, phrases = TruthBook(), Phrases()
    for path in sorted((library / FOLDER).glob("*.yaml")):
        form = {TRUTH_FILE: TRUTH, PHRASES_FILE: PHRASES}.get(path.name, DRILL)
        file, raw = _read(path, form)
        files[path.name] = file
        if form is TRUTH:
            truth = build_drill.truth_book(raw)
        elif form is PHRASES:
            phrases = build_drill.phrases(raw)
        elif raw:
            books[path.stem] = build_drill.drill_book(raw)
            _named(file, raw, path.stem)
    return Drills(books, truth, phrases, files)


def _read(path: Path, form: Record) -> tuple[DrillFile, dict[str, Any]]:
    shown_as = shown(path)
    text, problems = source_text.load(path, shown_as)
    problems = [*problems, *(source_text.refusals(text, shown_as) if text is not None else ())]
    if text is None or problems:
        return DrillFile(shown_as, text or "", Tree(shown_as, None, list(problems))), {}
    tree = parse(text, shown_as)
    return DrillFile(shown_as, text, tree), read(tree, form) or {}


def _named(file: DrillFile, raw: dict[str, Any], stem: str) -> None:
    named = raw.get("drill of", stem)
    if named != stem:
        at = ("drill of",)
        message = _("the drills are of `{named}` and lie where those of `{stem}` belong").format(
            named=named, stem=stem
        )
        advice = _("Rename the file to `{named}.yaml`, or write `{stem}`.").format(
            named=named, stem=stem
        )
        tree = file.tree
        tree.report(codes.FILE_NAME.at(tree.file, at, tree.span(at), message, advice))


def drill_digest(loaded: Loaded, drills: Drills, pathway: str) -> str:
    """Return the SHA-256 of all that a drill of a pathway goes by, in hexadecimal.

    Phrases are left out: what words were taken for stands in the journal.
    """
    content = sha256(digest(loaded, pathway).encode())
    for name in (TRUTH_FILE, f"{pathway}.yaml"):
        text = drills.files[name].text.replace("\r\n", "\n") if name in drills.files else ""
        content.update(f"{len(text)}\n{text}".encode())
    return content.hexdigest()
