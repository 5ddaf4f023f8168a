"""What reading, the checks, local sheets, stamps and stores say is told, every word of it.

In a language of dots nothing is left of what the program says itself. What still has letters must
be the author's: a name in backticks, words in quotes, or a word of the very file.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from pathlib import Path

import pytest
from chamberwise.engine.chart.fork import fork_words
from chamberwise.engine.chart.labels import either
from chamberwise.engine.chart.ways import ways
from chamberwise.engine.checks.declared import declared
from chamberwise.engine.checks.wording import RULES
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.diagnostics.text import problem_text, summary
from chamberwise.engine.local import codes as of_sheets
from chamberwise.engine.model.step import Branch
from chamberwise.engine.reading import form_drill
from chamberwise.engine.reading.form_local import LOCAL_SHEET
from chamberwise.engine.reading.form_pathway import PATHWAY
from chamberwise.engine.reading.form_reviewed import REVIEWED
from chamberwise.engine.reading.form_vocabulary import VOCABULARY
from chamberwise.engine.reading.library import load_library, read_file
from chamberwise.engine.reading.scalars import EXPECTED
from chamberwise.engine.reading.shapes import (
    Either,
    Entries,
    Items,
    Kinds,
    OneOrMore,
    Record,
    Shape,
)
from chamberwise.engine.spreadsheet.cells import HEADS, cells_of
from chamberwise.engine.spreadsheet.kinds import KINDS
from chamberwise.engine.spreadsheet.names import check_names
from chamberwise.engine.spreadsheet.steps import steps_of
from chamberwise.engine.stamp.code import stamp_of_number
from chamberwise.engine.stamp.copies import Register
from chamberwise.engine.stamp.verdict import Unknown, verdict
from chamberwise.engine.store import register_file, runs_file
from chamberwise.engine.walk.walk import JournalError, fold

from tests.command.test_steps import FAULTS, SHEET
from tests.engine.checks.test_each_check import NO_TEXT
from tests.engine.local import stage
from tests.language.catalogues import extracted
from tests.language.pseudo import speaking_dots
from tests.support.case_files import CASES, case_file, problems_of

_OF_THE_AUTHOR = re.compile(r'`[^`]*`|"[^"]*"')
_WORD = re.compile(r"[A-Za-z]{2,}(?:[-.][A-Za-z]+)*")
_ALWAYS_OURS = {"a", "an", "and", "at", "in", "is", "it", "no", "not", "of", "or", "the", "to"}
LIBRARY = Path(__file__).resolve().parents[1] / "library"


def untold(text: str, of_the_author: str = "") -> list[str]:
    """Return the words of a text that are not dots and not the author's."""
    known = {*_WORD.findall(of_the_author)} - _ALWAYS_OURS
    return [word for word in _WORD.findall(_OF_THE_AUTHOR.sub("", text)) if word not in known]


def said_by(problem: Problem) -> tuple[str, ...]:
    notes = (note.message for note in problem.notes)
    return (problem.message, problem.why, problem.advice, *notes)


def forgotten(problems: Iterable[Problem], text: str) -> list[tuple[str, str]]:
    return [
        (problem.code, said)
        for problem in problems
        for said in said_by(problem)
        if untold(said, text) or "·" not in said
    ]


def written_by_the_author(text: str) -> str:
    return "\n".join(line for line in text.splitlines() if not line.lstrip().startswith("#"))


@pytest.mark.parametrize("path", sorted(CASES.glob("*.yaml")), ids=lambda path: path.stem)
def test_every_problem_of_a_pathway_is_told(path: Path) -> None:
    case = case_file(path)
    with speaking_dots():
        found = problems_of(case, case.text)
    assert len(found) == len(case.expected)
    # Patterns of rules are file words, `stale` a key that a rule cannot have; figures have units,
    # and a negation is told by its word.
    keys = "chain response stale cannot tell Never mg"
    assert forgotten(found, written_by_the_author(case.text) + keys) == []


@pytest.mark.parametrize("path", stage.SHEETS, ids=lambda path: path.stem)
def test_every_problem_of_a_local_sheet_is_told(path: Path) -> None:
    with speaking_dots():
        file = stage.sheet(path.stem)
        found = stage.problems(file)
    below = "".join(each.text for each in stage.below().files.values())
    assert forgotten(found, written_by_the_author(file.text + below)) == []


def test_what_is_no_text_of_a_pathway_is_told(tmp_path: Path) -> None:
    path = tmp_path / "file.yaml"
    for data in NO_TEXT.values():
        path.write_bytes(data)
        with speaking_dots():
            found = read_file(path).problems
        assert found
        assert forgotten(found, "UTF-8") == []
    with speaking_dots():
        assert forgotten(read_file(tmp_path).problems, "") == []


def test_every_wording_rule_tells_its_hits() -> None:
    # What is to be written instead is of the text's language, and that is English.
    instead = " right eye"
    for rule in RULES:
        with speaking_dots():
            hits = list(rule.find(rule.wrong))
        assert hits, rule.slug
        told = [(hit.message, hit.advice) for hit in hits]
        assert [each for each in told if untold(" ".join(each), rule.wrong + instead)] == []


def of_shape(shape: Shape, met: set[int]) -> Iterator[str]:
    """Yield the names and descriptions of a form that problems speak of."""
    if id(shape) in met:
        return
    met.add(id(shape))
    match shape:
        case Record():
            yield shape.name
            for key in shape.keys.values():
                yield key.doc
                yield from of_shape(key.shape, met)
        case Kinds():
            yield from (shape.name, shape.noun)
            for record in shape.by_key.values():
                yield from of_shape(record, met)
        case Entries() | Items() | OneOrMore():
            yield from of_shape(shape.of, met)
        case Either():
            yield from of_shape(shape.long, met)
        case _:
            pass


def test_every_title_and_every_form_can_be_told() -> None:
    marked = {each.id for each in extracted() if isinstance(each.id, str)}
    codes = [*declared(), *(each for each in vars(of_sheets).values() if isinstance(each, Code))]
    texts = [text for code in codes for text in (code.title, code.why)]
    texts += [text for rule in RULES for text in (rule.title, rule.why, rule.source)]
    texts += EXPECTED.values()
    forms = (PATHWAY, VOCABULARY, LOCAL_SHEET, REVIEWED)
    drills = (form_drill.DRILL, form_drill.TRUTH, form_drill.PHRASES)
    texts += [text for form in (*forms, *drills) for text in of_shape(form, set())]
    assert len(texts) > 400
    assert [text for text in texts if text not in marked] == []


@pytest.mark.parametrize(("was", "now", "_told"), FAULTS)
def test_every_problem_of_a_sheet_of_steps_is_told(was: str, now: str, _told: str) -> None:
    text = SHEET.replace(was, now)
    library = load_library(LIBRARY).library
    with speaking_dots():
        found = cells_of(text.encode(), "steps.csv")
        if not found.problems:
            check_names(found, steps_of(found), library)
    assert found.problems
    said = "\n".join(text for each in found.problems for text in (each.message, each.advice))
    # Heads and kinds of rows are file words; the reader of CSV has words of its own.
    for listed in (", ".join(HEADS), ", ".join(KINDS), "unexpected end of data"):
        said = said.replace(listed, "")
    assert untold(said) == []


def test_the_frame_of_a_report_is_told() -> None:
    case = case_file(CASES / "names.yaml")
    with speaking_dots():
        found = problems_of(case, case.text)
        shown = "\n".join(problem_text(each, {}) for each in found)
        ends = [summary(found, 1), summary((), 2)]
    labels = [line for line in shown.splitlines() if re.match(r"\s+[a-z]+:", line)]
    assert labels == []
    assert not re.search(r": (?:error|warning|notice):", shown)
    assert [each for each in ends if untold(each)] == []


def test_what_keeps_a_stamp_from_being_read_is_told() -> None:
    good = stamp_of_number(1234)
    with speaking_dots():
        found = [verdict(typed, {}, Register()) for typed in ("123", f"U{good[1:]}", "0", good)]
        found.append(verdict(f"{good[:-1]}{'0' if good[-1] != '0' else '1'}", {}, Register()))
    assert all(isinstance(each, Unknown) for each in found)
    assert [each for each in found if isinstance(each, Unknown) and untold(each.why, good)] == []


def test_what_keeps_a_store_from_being_read_is_told(tmp_path: Path) -> None:
    path = tmp_path / "kept"
    for text in ("{", "{}", '{"format": 7}', '{"format": 1, "copies": 3, "contents": {}}'):
        path.write_text(text, encoding="utf-8")
        with speaking_dots(), pytest.raises(register_file.RegisterError) as refused:
            register_file.read(path)
        assert untold(str(refused.value).replace(str(path), "")) == []
    with speaking_dots(), pytest.raises(runs_file.RunsError) as unusable:
        runs_file.opened(path)
    # The words of the database itself are not ours to tell.
    said = str(unusable.value).replace(str(path), "")
    assert untold(said, "file is not a database CHAMBERWISE_HOME") in ([], ["is", "not"])
    with speaking_dots(), pytest.raises(JournalError) as empty:
        fold(load_library(LIBRARY).library, ())
    assert untold(str(empty.value)) == []


def test_the_words_of_a_chart_are_told() -> None:
    library = load_library(LIBRARY).library
    with speaking_dots():
        told = [either(("One", "Two"))]
        for name, pathway in library.pathways.items():
            for step in pathway.steps.values():
                told += [
                    label
                    for way in ways(library, name, step.id, frozenset())
                    for label in way.labels
                ]
                if isinstance(step, Branch):
                    told.append(fork_words(library, name, step))
    assert any("·" in each for each in told)
    ours = re.compile(r"\b(?:OR|AND|Cannot tell|Otherwise|Not known|Until then|rounds?|Decide)\b")
    assert [each for each in told if ours.search(each)] == []
