"""What is found of walks in a library's bare form is what is found in the library itself."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.exploration.bare import bare, bare_rule
from chamberwise.engine.exploration.explore import explore
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Outcome, Question, Step
from chamberwise.engine.proof.kept import Kept
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.sighting import exits_end, sighted
from hypothesis import given

from tests.support.rules import Ruled, ruled_libraries

any_ruled = ruled_libraries() | ruled_libraries(tame=False)


def reworded(step: Step) -> Step:
    """Return a step that says everything otherwise and does the same."""
    cautions = tuple(replace(each, harm="Other.", instead="Else.") for each in step.cautions)
    step = replace(step, why="Because.", short="Short", sources=(), cautions=cautions)
    if isinstance(step, Question):
        answers = tuple(replace(each, label="Other") for each in step.answers)
        return replace(step, question="Is it?", answers=answers)
    if isinstance(step, Action):
        lines = tuple(replace(each, text="Do it.", when="Now") for each in step.lines)
        return replace(step, lines=lines, needs=(), time_target=5)
    if isinstance(step, Outcome):
        owed = tuple(replace(each, text="Owe it.") for each in step.owed)
        return replace(step, title="Ended", owed=owed)
    return step


def in_other_words(library: Library) -> Library:
    def told(pathway: Pathway) -> Pathway:
        steps = {name: reworded(step) for name, step in pathway.steps.items()}
        return replace(pathway, title="Other", summary="Other", edition="9", steps=steps)

    pathways = {name: told(each) for name, each in library.pathways.items()}
    return Library(library.shared, pathways)


@given(any_ruled)
def test_verdicts_and_walks_that_break_a_rule_are_those_of_the_library(drawn: Ruled) -> None:
    whole = prove(drawn.library, drawn.entry, drawn.rules)
    plain = [bare_rule(rule) for rule in drawn.rules]
    found = prove(bare(drawn.library), drawn.entry, plain)
    back = [
        replace(each, rule=rule) for each, rule in zip(found.verdicts, drawn.rules, strict=True)
    ]
    assert tuple(back) == whole.verdicts
    assert found.states == whole.states


@given(any_ruled)
def test_what_walks_show_is_what_they_show_of_the_library(drawn: Ruled) -> None:
    plain = bare(drawn.library)
    whole, found = explore(drawn.library, drawn.entry), explore(plain, drawn.entry)
    assert (found.bits, found.nodes, found.undecided) == (whole.bits, whole.nodes, whole.undecided)
    assert [found.way_to(at) for at in range(len(found))] == [
        whole.way_to(at) for at in range(len(whole))
    ]
    if exits_end(drawn.library):
        assert sighted(plain, drawn.entry) == sighted(drawn.library, drawn.entry)


@given(any_ruled)
def test_other_words_have_the_same_bare_library(drawn: Ruled) -> None:
    assert bare(in_other_words(drawn.library)) is bare(drawn.library)


@given(any_ruled, any_ruled)
def test_libraries_with_one_bare_form_are_proved_alike(one: Ruled, other: Ruled) -> None:
    """Verdicts kept of one library never stand for another one."""
    kept = Kept()
    for drawn in (one, other, one):
        words = replace(drawn.library.shared, rules={rule.id: rule for rule in drawn.rules})
        library = Library(words, drawn.library.pathways)
        assert kept.proof(library, drawn.entry).verdicts == prove(library, drawn.entry).verdicts
