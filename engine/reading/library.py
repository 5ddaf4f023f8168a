"""From folders and files to one library, with every file's tree and problems kept beside it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path, PurePath
from typing import Any

from chamberwise.engine.approval.standing import settled
from chamberwise.engine.diagnostics.problem import Pointer, Problem, Severity
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.local import Local
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.words import Words
from chamberwise.engine.reading import codes, source_text
from chamberwise.engine.reading.build_pathway import pathway as build_pathway
from chamberwise.engine.reading.build_words import words as build_words
from chamberwise.engine.reading.form_local import LOCAL_SHEET
from chamberwise.engine.reading.form_pathway import PATHWAY
from chamberwise.engine.reading.form_translation import TRANSLATION
from chamberwise.engine.reading.form_vocabulary import VOCABULARY
from chamberwise.engine.reading.local_sheet import LocalSheet, local_sheet
from chamberwise.engine.reading.read import read
from chamberwise.engine.reading.translation_file import TranslationFile, translation_file
from chamberwise.engine.reading.tree import Tree, parse

_WORDS = ("findings", "choices", "acts", "duties", "kit", "sources")
TABLES = (*_WORDS, "rules")
_DEFINING = {(table,) for table in (*_WORDS, "phases")}


@dataclass(slots=True)
class File:
    """One file as read: its path as shown, its text and tree, and the problems of its form."""

    shown_as: str
    tree: Tree
    text: str = ""
    pathway: Pathway | None = None
    words: Words | None = None
    sheet: LocalSheet | None = None
    translation: TranslationFile | None = None

    @property
    def problems(self) -> list[Problem]:
        """Every problem of encoding, YAML and form, in the order found."""
        return self.tree.problems

    @property
    def is_whole(self) -> bool:
        """Whether everything in it could be read."""
        return not any(each.severity is Severity.ERROR for each in self.problems)

    @property
    def head_is_whole(self) -> bool:
        """Whether its status, approval and dates could be read."""
        keys = ("status", "authors", "approved by", "approved on", "reviewed", "review by")
        named = [each.pointer[0] for each in self.problems if each.pointer]
        return not any(key in named for key in keys) and all(map(_has_place, self.problems))

    @property
    def steps_are_whole(self) -> bool:
        """Whether all that a walk goes by could be read: entry, steps, phases and words."""
        errors = (each for each in self.problems if each.severity is Severity.ERROR)
        return self.tree.root is not None and not any(map(_of_steps, errors))

    @property
    def written_steps(self) -> frozenset[str]:
        """Every step name in it, those of steps that could not be read among them."""
        return frozenset(_names(self.tree.root, "steps"))

    @property
    def is_vocabulary(self) -> bool:
        """Whether it lists shared words, or lies where such files lie and could not be read."""
        unread = self.tree.root is None and PurePath(self.shown_as).parent.name == "vocabulary"
        return self.words is not None or unread

    @property
    def rules_are_whole(self) -> bool:
        """Whether every safety rule in it could be read."""
        return not any(problem.pointer[:1] == ("rules",) for problem in self.problems)

    @property
    def defines_all(self) -> bool:
        """Whether every word it means to define could be read."""
        return self.tree.root is not None and not any(map(_of_definitions, self.problems))


def _of_definitions(problem: Problem) -> bool:
    """Whether it lies in a table of words, or under a key that may have been meant for one."""
    return _is_misspelt_at_the_top(problem) or problem.pointer[:1] in _DEFINING


def _is_misspelt_at_the_top(problem: Problem) -> bool:
    return len(problem.pointer) == 1 and problem.code == codes.UNKNOWN_KEY.slug


def _has_place(problem: Problem) -> bool:
    """Whether it is of some key, and not of one that is missing or misspelt at the top."""
    return bool(problem.pointer) and not _is_misspelt_at_the_top(problem)


def _of_steps(problem: Problem) -> bool:
    """Whether it may have hidden an entry, a step or a word."""
    by_walks = ("start", "steps")
    return not problem.pointer or problem.pointer[0] in by_walks or _of_definitions(problem)


@dataclass(slots=True)
class Loaded:
    """A library and the files it came from."""

    library: Library
    files: dict[str, File] = field(default_factory=dict)
    file_of: dict[str, str] = field(default_factory=dict)
    """The file of each pathway, by its name."""
    defined: dict[tuple[str, str], tuple[str, Pointer]] = field(default_factory=dict)
    """Where each shared word is defined: table and name, to file and place."""
    sheet: str = ""
    """The file of the unit's sheet that lies over the library, if there is one."""
    fallen: Mapping[PathwayId, tuple[str, ...]] = field(default_factory=dict)
    """Pathways called approved that print as drafts, and which parts changed since."""
    written: Library | None = None
    """The library as it was written, where `library` has its texts in another language."""

    @property
    def vocabulary(self) -> list[File]:
        """Return the files of shared words, those that could not be read among them."""
        return [file for file in self.files.values() if file.is_vocabulary]

    @property
    def texts(self) -> dict[str, str]:
        """Return the files' texts by path, for showing lines."""
        return {name: file.text for name, file in self.files.items()}

    def source(self, pathway: str) -> File:
        """Return the file a pathway was read from."""
        return self.files[self.file_of[pathway]]


def read_file(path: Path) -> File:
    """Read one file, pathway or vocabulary, whatever it holds. Never raises for any content."""
    shown_as = shown(path)
    text, problems = source_text.load(path, shown_as)
    return read_text(text, shown_as, problems)


def read_file_again(path: Path, before: File) -> File:
    """Read a file that was read before; it is the same where not one letter of it changed."""
    shown_as = shown(path)
    text, problems = source_text.load(path, shown_as)
    is_same = text is not None and not problems and text == before.text
    if is_same and before.tree.root is not None and shown_as == before.shown_as:
        return before
    return read_text(text, shown_as, problems)


def read_text(text: str | None, shown_as: str, problems: Iterable[Problem] = ()) -> File:
    """Read one file's text; `None` where the problems say why there is none."""
    if text is None:
        return File(shown_as, Tree(shown_as, None, list(problems)))
    if refused := source_text.refusals(text, shown_as):
        return File(shown_as, Tree(shown_as, None, [*problems, *refused]))
    return understood(File(shown_as, parse(text, shown_as), text))


def understood(file: File) -> File:
    """Return a file with what its tree says, and the problems of its form."""
    tree = file.tree
    if tree.root is None:
        return file
    if is_local_sheet(tree):
        raw = read(tree, LOCAL_SHEET)
        file.sheet = local_sheet(raw, tree) if raw is not None else None
    elif is_translation(tree):
        raw = read(tree, TRANSLATION)
        file.translation = translation_file(raw) if raw is not None else None
    elif _is_vocabulary(tree):
        raw = _without_half_rules(read(tree, VOCABULARY), tree)
        file.words = build_words(raw) if raw is not None else None
    else:
        raw = _without_half_rules(read(tree, PATHWAY), tree)
        file.pathway = build_pathway(raw) if raw is not None else None
    return file


def _without_half_rules(raw: dict[str, Any] | None, tree: Tree) -> dict[str, Any] | None:
    """Leave out every rule that could not be read whole: the rest might be another rule."""
    if raw is not None and "rules" in raw:
        told = {each.pointer[1] for each in tree.problems if _is_in(each, "rules")}
        raw["rules"] = {name: rule for name, rule in raw["rules"].items() if name not in told}
    return raw


def _is_in(problem: Problem, table: str) -> bool:
    return len(problem.pointer) > 1 and problem.pointer[0] == table


def is_local_sheet(tree: Tree) -> bool:
    """Whether a file is a unit's sheet over a pathway: its head says so."""
    return "local sheet" in getattr(tree.root, "entries", {})


def is_translation(tree: Tree) -> bool:
    """Whether a file holds texts in another language: its head says so."""
    return "translation of" in getattr(tree.root, "entries", {})


def _is_vocabulary(tree: Tree) -> bool:
    """Whether a file lists words: it says so, or holds words and nothing of a pathway."""
    entries = getattr(tree.root, "entries", {})
    if "vocabulary" in entries or "pathway" in entries:
        return "pathway" not in entries
    of_pathway = set(PATHWAY.keys) - set(VOCABULARY.keys)
    return any(name in TABLES for name in entries) and of_pathway.isdisjoint(entries)


def load_library(folder: Path, extra: Iterable[Path] = ()) -> Loaded:
    """Read a folder's vocabulary and pathways, then `extra` files, which stand before namesakes."""
    return assemble([read_file(path) for path in (*library_paths(folder), *extra)])


def library_paths(folder: Path) -> list[Path]:
    """Return the files of a folder's vocabulary, then those of its pathways."""
    return [*sorted(folder.glob("vocabulary/*.yaml")), *sorted(folder.glob("*.yaml"))]


def assemble(files: Iterable[File], sheet: str = "", local: Local | None = None) -> Loaded:
    """Put files together to one library; a later pathway of the same name takes the place.

    An approval counts only for the content it was given to: else the pathway stands as a draft.
    """
    shared = Words()
    pathways: dict[str, Pathway] = {}
    loaded = Loaded(Library(shared, pathways), sheet=sheet)
    for file in files:
        loaded.files[file.shown_as] = file
        if file.words is not None:
            _define(file, loaded)
            shared = file.words.over(shared)
        if file.pathway is not None and file.pathway.id:
            pathways[file.pathway.id] = file.pathway
            loaded.file_of[file.pathway.id] = file.shown_as
    loaded.library, loaded.fallen = settled(Library(shared, pathways, local))
    return loaded


def _define(file: File, loaded: Loaded) -> None:
    root = file.tree.root
    for table in TABLES:
        for name in _names(root, table):
            first = loaded.defined.setdefault((table, name), (file.shown_as, (table, name)))
            if first[0] != file.shown_as:
                span = file.tree.span((table, name), at_key=True)
                message = _("`{name}` is already defined in {file}").format(
                    name=name, file=first[0]
                )
                advice = _("Keep one definition.")
                problem = codes.DUPLICATE_KEY.at(
                    file.shown_as, (table, name), span, message, advice
                )
                file.tree.problems.append(problem)


def _names(root: object, table: str) -> Iterable[str]:
    entry = getattr(root, "entries", {}).get(table)
    return getattr(entry.value, "entries", {}) if entry else ()


def shown(path: Path) -> str:
    """Return a path as it is shown: from the folder stood in, where it lies there."""
    try:
        return str(path.resolve().relative_to(Path.cwd()))
    except (ValueError, OSError, RuntimeError):
        return str(path)
