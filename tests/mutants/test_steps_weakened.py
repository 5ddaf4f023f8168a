"""Edits within a step: what it does, what it makes known, how often, and of what it warns."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, SignalWord
from chamberwise.engine.model.words import Effects, Words
from chamberwise.engine.mutants.all_mutants import mutants
from chamberwise.engine.mutants.kinds import (
    cautions,
    drop_act,
    drop_effect,
    drop_line,
    loosen_bound,
    swap_lines,
)

from tests.mutants.small import lines_of, made, other_steps_are_untouched, small, step_of
from tests.support.build import changed, do, end, library, pathway


def test_neighbouring_lines_change_places() -> None:
    (mutant,) = made(swap_lines.mutants).values()
    assert mutant.id == "swap-lines/fill/fill <-> cover"
    assert lines_of(mutant, "fill") == ["cover", "fill"]


def test_the_same_act_twice_is_told_apart_by_number_and_not_exchanged() -> None:
    whole = library(pathway("one", do("work", "done", acts="fill fill cut fill"), end("done")))
    own = whole.pathways["one"]
    assert [each.id for each in swap_lines.mutants(own, whole.shared)] == [
        "swap-lines/work/fill (2) <-> cut",
        "swap-lines/work/cut <-> fill (3)",
    ]
    assert [each.id for each in drop_act.mutants(own, whole.shared)] == [
        "drop-act/work/fill",
        "drop-act/work/fill (2)",
        "drop-act/work/cut",
        "drop-act/work/fill (3)",
    ]


def test_what_one_person_says_and_does_is_no_order() -> None:
    step = do("work", "done", acts="tell fill cut")
    told, *done = step.lines
    said = changed(step, lines=(replace(told, said_aloud=True), *done))
    whole = library(pathway("one", said, end("done")))
    assert [each.id for each in swap_lines.mutants(whole.pathways["one"], whole.shared)] == [
        "swap-lines/work/fill <-> cut"
    ]


def test_a_line_loses_its_act_and_keeps_its_place() -> None:
    found = made(drop_act.mutants)
    assert set(found) == {"fill/fill", "fill/cover", "hold/hold", "again/fill", "closed/tell"}
    assert lines_of(found["fill/cover"], "fill") == ["fill", None]
    assert lines_of(found["closed/tell"], "closed") == [None]


def test_a_line_is_dropped_but_not_the_only_one() -> None:
    found = made(drop_line.mutants)
    assert set(found) == {"fill/fill", "fill/cover", "closed/tell"}
    assert lines_of(found["fill/fill"], "fill") == ["cover"]
    assert lines_of(found["closed/tell"], "closed") == []


def test_an_effect_of_a_step_is_forgotten() -> None:
    found = made(drop_effect.mutants)
    step = step_of(found["fill/makes stale gel"], "fill")
    assert isinstance(step, Action)
    assert step.effects == Effects((("depth", ("deep",)),))
    assert other_steps_are_untouched(found["fill/makes stale gel"], "fill")


def test_an_effect_of_an_act_is_forgotten_where_the_pathway_uses_it() -> None:
    found = made(drop_effect.mutants)
    assert set(found) == {
        "fill/makes known depth",
        "fill/makes stale gel",
        "act fill/makes known depth",
        "act hold/makes stale depth",
    }
    words = found["act hold/makes stale depth"].edited
    assert isinstance(words, Words)
    assert words.acts["hold"].effects == Effects()
    assert words.acts["cut"].effects == Effects(stale=("gel",))


def test_an_act_of_the_pathways_own_is_edited_there() -> None:
    from tests.support.build import act, finding

    own = pathway(
        "one",
        do("work", "done", acts="fill"),
        end("done"),
        findings=[finding("gel", "none some")],
        acts=[act("fill", stale="gel")],
    )
    (mutant,) = drop_effect.mutants(own, Words())
    assert isinstance(mutant.edited, Pathway)
    assert mutant.edited.words.acts["fill"].effects == Effects()
    assert mutant.within(library(own)).words("one").acts["fill"].effects == Effects()


def test_a_bound_is_raised_or_gone() -> None:
    found = made(loosen_bound.mutants)
    bounds = {name: step_of(each, "again").bound for name, each in found.items()}
    assert {name: bound and bound.at_most for name, bound in bounds.items()} == {
        "again/1 more": 3,
        "again/10 more": 12,
        "again/none": None,
    }


def test_a_caution_is_dropped_or_weakened() -> None:
    dropped, weakened = made(cautions.dropped), made(cautions.weakened)
    assert set(dropped) == {"fill/cut", "fill/The light is dim"}
    assert set(weakened) == {"fill/cut"}
    kept = [each.signal for each in step_of(dropped["fill/cut"], "fill").cautions]
    told = [each.signal for each in step_of(weakened["fill/cut"], "fill").cautions]
    assert (kept, told) == ([SignalWord.NOTICE], [SignalWord.NOTICE, SignalWord.NOTICE])


def test_the_mutants_of_one_question_are_these() -> None:
    of_look = [
        each.id for each in mutants(small(), "one") if each.id.split("/")[1].split(" ")[0] == "look"
    ]
    assert of_look == [
        "drop-step/look -> hold",
        "drop-step/look -> fill",
        "drop-step/look -> clear",
        "cannot-tell/look/left out",
        "cannot-tell/look/as none",
        "cannot-tell/look/as front",
        "retarget/look/none -> fill",
        "retarget/look/none -> clear",
        "retarget/look/none -> which",
        "retarget/look/back -> hold",
        "retarget/look/back -> clear",
        "retarget/look/front -> hold",
        "retarget/look/front -> fill",
        "retarget/look/front -> closed",
        "retarget/look/front -> stopped",
        "move-value/look/none -> back",
        "move-value/look/none -> front",
        "move-value/look/back -> none",
        "move-value/look/back -> front",
        "move-value/look/front -> none",
        "move-value/look/front -> back",
    ]


def test_no_mutant_is_made_twice_and_none_is_the_original() -> None:
    whole = small()
    every = list(mutants(whole, "one"))
    assert len({each.id for each in every}) == len(every)
    for number, one in enumerate(every):
        assert one.edited not in (whole.pathways["one"], whole.shared)
        assert all(one.edited != other.edited for other in every[:number])


def test_an_id_does_not_change_with_edits_elsewhere() -> None:
    from dataclasses import replace

    whole = small()
    own = whole.pathways["one"]
    steps = {"first": do("first", "look", acts="hold"), **own.steps}
    more = library(
        replace(own, steps=steps),
        whole.pathways["other"],
        findings=whole.shared.findings.values(),
        acts=whole.shared.acts.values(),
    )
    before = {each.id for each in mutants(whole, "one")}
    assert before <= {each.id for each in mutants(more, "one")}
