"""Edits of where a walk goes on: each makes one change, and the change it says."""

from __future__ import annotations

from chamberwise.engine.graph.arrows import arrows
from chamberwise.engine.model.step import CANNOT_TELL, Branch, Handover, Outcome, Question
from chamberwise.engine.mutants.kinds import (
    cannot_tell,
    drop_handover,
    drop_return,
    drop_step,
    move_value,
    retarget,
    swap_rows,
    swap_steps,
    widen_row,
)

from tests.mutants.small import edited, made, other_steps_are_untouched, step_of


def test_a_dropped_action_is_passed_over() -> None:
    mutant = made(drop_step.mutants)["hold"]
    assert "hold" not in edited(mutant).steps
    assert arrows(step_of(mutant, "look"))[0] == ("none", "which")
    assert arrows(step_of(mutant, "fill")) == (("go to", "which"),)
    assert other_steps_are_untouched(mutant, "hold", "look", "fill")


def test_a_dropped_question_or_branch_goes_each_way_once() -> None:
    found = made(drop_step.mutants)
    assert set(found) == {
        "look -> hold",
        "look -> fill",
        "look -> clear",
        "fill",
        "hold",
        "which -> clear",
        "which -> closed",
        "which -> again",
        "again",
    }
    assert edited(found["look -> clear"]).start == "clear"


def test_an_arrow_leads_to_plausible_steps_only() -> None:
    found = made(retarget.mutants)
    assert {each for each in found if each.startswith("look/front")} == {
        "look/front -> hold",  # where another answer leads
        "look/front -> fill",
        "look/front -> closed",  # one step too far
        "look/front -> stopped",
    }
    mutant = found["look/front -> hold"]
    assert dict(arrows(step_of(mutant, "look")))["front"] == "hold"
    assert other_steps_are_untouched(mutant, "look")


def test_every_kind_of_arrow_is_turned() -> None:
    labels = {each.partition(" -> ")[0] for each in made(retarget.mutants)}
    assert {"fill/go to", "which/otherwise", "which/not known", "clear/done"} <= labels
    assert {"which/gel=none", "again/after that", f"look/{CANNOT_TELL}"} <= labels


def test_an_outcome_may_be_taken_for_any_other() -> None:
    assert "which/gel=none -> stopped" in made(retarget.mutants)


def test_cannot_tell_is_left_out_or_taken_for_an_answer() -> None:
    found = made(cannot_tell.mutants)
    assert set(found) == {"look/left out", "look/as none", "look/as front"}
    silent = step_of(found["look/left out"], "look")
    assert isinstance(silent, Question)
    assert [answer.id for answer in silent.answers] == ["none", "back", "front"]
    assert dict(arrows(step_of(found["look/as none"], "look")))[CANNOT_TELL] == "hold"


def test_a_value_is_counted_to_another_answer() -> None:
    found = made(move_value.mutants)
    assert len(found) == 6
    step = step_of(found["look/back -> none"], "look")
    assert isinstance(step, Question)
    assert [(each.id, each.means) for each in step.answers] == [
        ("none", ("none", "back")),
        ("front", ("front",)),
        (CANNOT_TELL, ()),
    ]


def test_a_row_is_widened_by_a_value_or_a_term() -> None:
    found = made(widen_row.mutants)
    assert set(found) == {
        "which/gel=front & depth=deep with gel=none",
        "which/gel=front & depth=deep with gel=back",
        "which/gel=front & depth=deep without gel",
        "which/gel=front & depth=deep with depth=flat",
        "which/gel=front & depth=deep without depth",
        "which/gel=none with gel=back",
        "which/gel=none with gel=front",
    }
    step = step_of(found["which/gel=front & depth=deep without gel"], "which")
    assert isinstance(step, Branch)
    assert step.rows[0].when.terms == (("depth", ("deep",)),)


def test_two_rows_lead_where_the_other_should() -> None:
    (mutant,) = made(swap_rows.mutants).values()
    step = step_of(mutant, "which")
    assert isinstance(step, Branch)
    assert [row.go_to for row in step.rows] == ["closed", "clear"]


def test_neighbouring_actions_change_places() -> None:
    (mutant,) = made(swap_steps.mutants).values()
    assert mutant.id == "swap-steps/fill <-> hold"
    assert dict(arrows(step_of(mutant, "look")))["back"] == "hold"
    assert arrows(step_of(mutant, "hold")) == (("go to", "fill"),)
    assert arrows(step_of(mutant, "fill")) == (("go to", "which"),)


def test_a_handover_is_passed_over_by_each_way_back() -> None:
    found = made(drop_handover.mutants)
    assert set(found) == {"clear -> closed", "clear -> stopped"}
    assert dict(arrows(step_of(found["clear -> closed"], "look")))["front"] == "closed"


def test_one_way_back_is_lost() -> None:
    step = step_of(made(drop_return.mutants)["clear/failed"], "clear")
    assert isinstance(step, Handover)
    assert step.on_return == (("done", "closed"),)


def test_a_handover_for_good_becomes_an_end_with_nothing_owed() -> None:
    from tests.support.build import do, end, hand_over, library, pathway

    whole = library(
        pathway("one", do("act", "leave"), hand_over("leave", "two")), pathway("two", end("done"))
    )
    (mutant,) = drop_handover.mutants(whole.pathways["one"], whole.shared)
    step = step_of(mutant, "leave")
    assert mutant.id == "drop-handover/leave/ends there"
    assert isinstance(step, Outcome)
    assert step.owed == ()
