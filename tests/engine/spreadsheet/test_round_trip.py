"""A sheet of steps gives back all that it can hold, and says what it cannot."""

from __future__ import annotations

from dataclasses import replace
from importlib.resources import files
from pathlib import Path

import pytest
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Line
from chamberwise.engine.reading.library import Loaded, load_library, read_text
from chamberwise.engine.spreadsheet.cells import cells_of, written
from chamberwise.engine.spreadsheet.steps import Steps, steps_of
from chamberwise.exports.scaffold.render import Beginning
from chamberwise.exports.steps.pathway_text import pathway_text
from chamberwise.exports.steps.rows import lost, rows_of, without_what_is_lost
from hypothesis import given
from hypothesis import strategies as st

from tests.support.build import TODAY

SHIPPED = load_library(Path(str(files("chamberwise.protocols"))))
TESTED = load_library(Path(__file__).resolve().parents[2] / "library")
EVERY = [
    (loaded, name) for loaded in (SHIPPED, TESTED) for name in loaded.library.pathways
]  # fmt: skip


def back(text: str) -> Steps:
    found = cells_of(text.encode(), "steps.csv")
    made = steps_of(found)
    assert found.problems == []
    return made


@pytest.mark.parametrize(("loaded", "name"), EVERY, ids=[name for _, name in EVERY])
def test_all_that_a_sheet_can_hold_comes_back(loaded: Loaded, name: str) -> None:
    pathway = loaded.library.pathways[name]
    held = without_what_is_lost(pathway)
    made = back(written(rows_of(pathway)))
    assert made.steps == held.steps
    assert next(iter(made.steps)) == held.start
    assert made.phases == held.phases
    assert (made.words.findings, made.words.acts) == (held.words.findings, held.words.acts)
    assert bool(list(lost(pathway))) == (held != pathway)


@pytest.mark.parametrize(("loaded", "name"), EVERY, ids=[name for _, name in EVERY])
def test_the_file_made_of_a_sheet_says_what_the_sheet_says(loaded: Loaded, name: str) -> None:
    made = back(written(rows_of(loaded.library.pathways[name])))
    text = pathway_text(made, Beginning("made", "Made"), TODAY, "schema")
    file = read_text(text, "made.yaml")
    assert file.problems == []
    assert file.pathway is not None
    assert file.pathway.steps == made.steps
    assert file.pathway.words.findings == made.words.findings


TEXTS = st.text(st.characters(codec="utf-8", categories=("L", "N", "P", "S")), min_size=1)


@given(TEXTS, st.sampled_from([",", ";", "\t"]), st.sampled_from(["\n", "\r\n"]), st.booleans())
def test_any_text_comes_back_however_a_spreadsheet_saves_it(
    text: str, delimiter: str, end: str, marked: bool
) -> None:
    pathway = with_text(text)
    lines = written(rows_of(pathway)).split("\r\n")
    if delimiter != ",":
        cells = [each.split(",") for each in lines if '"' not in each]
        if len(cells) < len(lines) or any(delimiter in line for line in lines):
            return  # a quoted cell; only a spreadsheet would write it anew
        lines = [delimiter.join(each) for each in cells]
    saved = ("\ufeff" if marked else "") + end.join(lines)
    assert back(saved).steps == without_what_is_lost(pathway).steps


def with_text(text: str) -> Pathway:
    pathway = TESTED.library.pathways["pressing-lids"]
    step = next(each for each in pathway.steps.values() if isinstance(each, Action))
    line = Line("surgeon", text)
    return replace(pathway, steps={**pathway.steps, step.id: replace(step, lines=(line,))})
