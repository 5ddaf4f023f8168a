"""Checking the drill files of a library: form, names, and that every scenario is fair."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from chamberwise.engine.checks.references import Of
from chamberwise.engine.checks.run import check_for_walk
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Pointer, Problem, Severity
from chamberwise.engine.drill.checking.names import (
    INJECT,
    OPENING,
    STEP,
    Named,
    of_book,
    of_phrases,
    of_truth,
)
from chamberwise.engine.drill.checking.telling import telling
from chamberwise.engine.drill.checking.trying import harmless, unended
from chamberwise.engine.drill.generate import drill_library
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.drill import DrillBook, TruthBook
from chamberwise.engine.model.library import Library
from chamberwise.engine.reading.drills import PHRASES_FILE, TRUTH_FILE, DrillFile, Drills
from chamberwise.engine.reading.library import Loaded

NOT_DEFINED = Code(
    "drill-name",
    Severity.ERROR,
    N_("A drill names what there is not"),
    N_("What hangs on that name would never happen in the drill."),
)
TELLS = Code(
    "drill-tells",
    Severity.ERROR,
    N_("A cue names what it is"),
    N_("Whoever is told cannot rehearse recognising it."),
)
NO_CONSEQUENCE = Code(
    "drill-no-consequence",
    Severity.ERROR,
    N_("A wrong act that leads to nothing"),
    N_("An error without an answer teaches that it does no harm."),
)
NO_END = Code(
    "drill-no-end",
    Severity.ERROR,
    N_("A scenario that does not come to its end, or punishes what is right"),
    N_("Whoever does everything right must come to the end without harm."),
)


NO_NAME: Mapping[str, str] = {
    Of.ACT: N_("act `{name}` is not defined"),
    Of.FINDING: N_("finding `{name}` is not defined"),
    Of.DUTY: N_("duty `{name}` is not defined"),
    Of.SOURCE: N_("source `{name}` is not defined"),
    STEP: N_("step `{name}` is not defined"),
    OPENING: N_("opening `{name}` is not defined"),
    INJECT: N_("inject `{name}` is not defined"),
}


@dataclass(frozen=True, slots=True)
class _Words:
    """What a file may name."""

    library: Library
    pathway: str
    truth: TruthBook
    book: DrillBook | None = None

    def known(self, of: str) -> list[str]:
        """Return every name of a kind."""
        words = self.library.words(self.pathway)
        steps = self.library.pathways[self.pathway].steps
        tables: dict[str, Iterable[str]] = {
            Of.ACT: words.acts,
            Of.FINDING: words.findings,
            Of.DUTY: words.duties,
            Of.SOURCE: words.sources,
            STEP: steps,
            OPENING: [each.id for each in self.book.openings] if self.book else (),
            INJECT: [each.id for each in self.book.injects] if self.book else (),
        }
        return list(tables[of])


def check_drills(loaded: Loaded, drills: Drills, pathways: Iterable[str]) -> list[Problem]:
    """Return every problem of the drill files that some pathways go by."""
    wanted = [name for name in pathways if name in drills.books]
    names = {f"{name}.yaml" for name in wanted} | ({TRUTH_FILE, PHRASES_FILE} if wanted else set())
    problems = [
        problem
        for name, file in drills.files.items()
        if name in names
        for problem in file.tree.problems
    ]
    if problems or not all(name in loaded.library.pathways for name in wanted):
        return problems
    for name in wanted:
        problems += _of_pathway(loaded, drills, name)
    return sorted(dict.fromkeys(problems), key=lambda each: (each.file, each.span or (0, 0)))


def _of_pathway(loaded: Loaded, drills: Drills, pathway: str) -> list[Problem]:
    """Return the problems of one book; of a pathway that cannot be walked only those of names."""
    book, truth = drills.books[pathway], drills.truth
    words = _Words(drill_library(loaded.library, truth, book), pathway, truth, book)
    problems = [*_names(words, of_book(book), drills.file_of(pathway))]
    if TRUTH_FILE in drills.files:
        problems += _names(words, of_truth(truth), drills.files[TRUTH_FILE])
    if PHRASES_FILE in drills.files:
        known = of_phrases(drills.phrases)
        problems += _names(words, known, drills.files[PHRASES_FILE])
    if problems or check_for_walk(loaded, pathway, date.min):
        return problems
    return [*_meaning(words, drills)]


def _names(words: _Words, named: Iterable[Named], file: DrillFile) -> Iterator[Problem]:
    findings = words.library.words(words.pathway).findings
    for each in named:
        if each.value_of is None:
            known = words.known(each.of)
            message = _(NO_NAME[each.of]).format(name=each.name)
        elif each.value_of in findings:
            known = [value.id for value in findings[each.value_of].values]
            message = _("`{finding}` has no value `{name}`").format(
                finding=each.value_of, name=each.name
            )
        else:
            continue
        if each.name not in known:
            advice = did_you_mean(each.name, known, _("Name one that is defined."))
            yield _at(file, NOT_DEFINED, each.pointer, message, advice)


def _meaning(words: _Words, drills: Drills) -> Iterator[Problem]:
    assert words.book
    file = drills.file_of(words.pathway)
    for pointer, text in telling(words.library, drills, words.book):
        advice = _("Say what can be seen, heard or felt, not what it means.")
        yield _at(file, TELLS, pointer, _("“{text}” says what it is").format(text=text), advice)
    for act in harmless(words.library, drills, words.book):
        message = _("`{act}` is called wrong, and in some scenario nothing follows it").format(
            act=act
        )
        advice = _("Give it a turn with `shows` and `lesson` for every truth there can be.")
        truth = drills.files[TRUTH_FILE]
        yield _at(truth, NO_CONSEQUENCE, ("wrong acts", act), message, advice)
    for pointer, why in unended(words.library, drills, words.book):
        yield _at(file, NO_END, pointer, why, _("Change its truth, or where it ends."))


def _at(file: DrillFile, code: Code, pointer: Pointer, message: str, advice: str) -> Problem:
    span = file.tree.span(pointer)
    return code.at(file.shown_as, pointer, span, message, advice)
