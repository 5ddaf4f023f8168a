"""Briefs, comparisons, mutants and drills in another language: what people read is told."""

from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.engine.brief.brief import Brief
from chamberwise.engine.brief.listing import read_list
from chamberwise.engine.brief.stock import read_stock
from chamberwise.engine.brief.work import brief
from chamberwise.engine.comparing.changes import changes_of_pathway
from chamberwise.engine.drill.fold import begin_drill
from chamberwise.engine.drill.ladder import nudge, told
from chamberwise.engine.drill.never_right import never_right
from chamberwise.engine.drill.taking import SECOND, Typed, take, tick
from chamberwise.engine.language.speaking import speaking
from chamberwise.engine.mutants.all_mutants import mutants
from chamberwise.engine.proof.replay_key import MistypedError, moves_of

from tests.engine.comparing.test_edits import EDITS
from tests.engine.comparing.versions import PATHWAY, new, old
from tests.engine.drill.stage import began, scenario, typed
from tests.language.bracketed import bracketed, untold
from tests.language.test_workings import NAMED, UNITS

DEMONSTRATION = Path(__file__).resolve().parents[2] / "protocols" / "demonstration"
LINES = (
    "has the capsule gone?",
    "foo bar",
    "the posterior capsule has ruptured /sure",
    "hold still /guess",
    "do not withdraw the tip",
    "look for vitreous",
    "fill the chamber with dispersive viscoelastic /likely",
)
EVERY = 6
"""Of the edits that are compared here; all of them are rated elsewhere."""
LISTS = {
    "identity": "case,Patient name\nA,Smith\n",
    "column": "case,lens colour\nA,red\n",
    "twice": "case,age,age\nA,70,70\n",
    "no case": "age\n70\n",
    "cells": "case,age\nA,70,71\n",
    "label": "case,age\nSmith,70\n",
    "nothing": "case,age\n",
}


def of_the_demonstration() -> Brief:
    listed, stock = (
        read_list(DEMONSTRATION / "list.csv").listed,
        read_stock(DEMONSTRATION / "stock.yaml").stock,
    )
    assert listed is not None
    assert stock is not None
    return brief(listed, stock)


def test_a_brief_is_told() -> None:
    with bracketed():
        found = of_the_demonstration()
        positions = [each.position.told for case in found.cases for each in case.backups]
    said = [*found.to_do, *positions]
    for case in found.cases:
        said += [case.planned, case.ceiling, *case.to_do, *case.ready]
        said += [part for each in case.backups for part in (each.way, each.refused)]
        said += [*case.risk.points, case.risk.open] if case.risk else []
    titles = {word for lens in lenses() for word in untold(lens)}
    known = UNITS | NAMED | titles
    assert {word for text in said for word in untold(text, frozenset(known))} == set()


def lenses() -> tuple[str, ...]:
    stock = read_stock(DEMONSTRATION / "stock.yaml").stock
    assert stock is not None
    return tuple(each.title for each in stock.lenses)


def test_a_brief_has_the_same_figures_in_every_language() -> None:
    english = of_the_demonstration()
    with speaking("de"):
        german = of_the_demonstration()
    assert german.chance == english.chance
    for one, other in zip(german.cases, english.cases, strict=True):
        assert [each.exact for each in one.backups] == [each.exact for each in other.backups]
        assert len(one.to_do) == len(other.to_do)


@pytest.mark.parametrize("name", LISTS)
def test_a_list_that_is_refused_is_refused_in_words_that_are_told(
    name: str, tmp_path: Path
) -> None:
    path = tmp_path / "list.csv"
    path.write_text(LISTS[name], encoding="utf-8")
    with bracketed():
        problems = read_list(path).problems
    assert problems
    fields = frozenset(untold(" ".join(each.advice for each in problems)))
    allowed = fields if name == "column" else frozenset[str]()
    assert {word for each in problems for word in untold(each.message, allowed)} == set()
    assert [each for each in problems if name != "column" and untold(each.advice)] == []


@pytest.mark.parametrize(("was", "now"), [each[2:] for each in EDITS[::EVERY]])
def test_the_reason_of_a_change_is_told(was: str, now: str) -> None:
    before, after = old().library.pathways[PATHWAY], new((was, now)).library.pathways[PATHWAY]
    with bracketed():
        found = [*changes_of_pathway(before, after, {})]
    assert [each.why for each in found if untold(each.why)] == []


def test_what_a_mutant_does_is_told_and_its_name_is_not() -> None:
    library = old().library
    english = {each.id: each.description for each in mutants(library, PATHWAY)}
    with bracketed():
        told = {each.id: each.description for each in mutants(library, PATHWAY)}
    assert [*told] == [*english]
    assert [text for text in told.values() if not text.startswith("⟦")] == []


def test_a_key_that_is_mistyped_is_refused_in_words_that_are_told() -> None:
    with bracketed(), pytest.raises(MistypedError) as error:
        moves_of(old(), "AAAA-AAAA", ())
    assert untold(str(error.value)) == []


def test_what_a_drill_answers_is_told() -> None:
    of = scenario()
    with bracketed():
        drill = tick(begin_drill(of, began(of)), of.first_cue * SECOND).drill
        said = [nudge(drill), told(drill)]
        for place, line in enumerate(LINES, start=1):
            taken = take(drill, Typed(line, (of.first_cue + place) * SECOND))
            drill = taken.drill
            said += [*taken.said, nudge(drill), told(drill)]
        said += [rule.title for rule in never_right(of)]
    texts = {step.why for step in of.library.pathways[of.pathway].steps.values()}
    assert [text for text in said if text not in texts and untold(text)] == []


def test_a_drill_goes_the_same_way_in_every_language() -> None:
    of = scenario()
    english = typed(of, LINES)
    with speaking("de"):
        german = typed(of, LINES)
    assert german.journal == english.journal
