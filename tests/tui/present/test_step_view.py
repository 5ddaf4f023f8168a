from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from chamberwise.engine.meaning.state import Answered
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Action, Handover
from chamberwise.engine.reading.library import Loaded, load_library
from chamberwise.engine.walk.walk import Walk, make, set_out
from chamberwise.exports.record.naming import READER, duty_title
from chamberwise.tui.present.arrange import arrange
from chamberwise.tui.present.choices import NOT_SET
from chamberwise.tui.present.parts import text_lines
from chamberwise.tui.present.step_page import Density, body, head, passed, warnings
from chamberwise.tui.present.step_view import StepKind, StepView, step_view

from tests.tui.stage import MORNING, TODAY, loaded, walked

SHIPPED = Path(__file__).parents[3] / "protocols"


def view(*typed: str) -> StepView:
    return step_view(walked(typed), TODAY)


def told(found: StepView, width: int = 78) -> str:
    parts = [*passed(found), *warnings(found), *head(found), *body(found)]
    return "\n".join(text_lines(parts, width))


def test_a_question_numbers_its_answers_and_puts_cannot_tell_last() -> None:
    answers = view().answers
    assert [(answer.key, answer.id) for answer in answers] == [
        (1, "none"),
        (2, "slow"),
        (3, "fast"),
        (4, "cannot tell"),
    ]
    assert answers[0].sign == "A dry sponge stays dry"
    assert answers[-1].is_cannot_tell
    assert answers[-1].sign


def test_an_answer_is_found_by_number_name_or_label() -> None:
    found = view("fast", "done", "calm", "done")
    for typed in ("2", "still-leaking", "It still leaks", " it STILL leaks "):
        answer = found.answer(typed)
        assert answer is not None
        assert answer.id == "still-leaking"
    assert found.answer("5") is None
    assert found.answer("") is None


def test_an_answer_for_several_values_gives_every_sign() -> None:
    found = view("fast", "done", "calm", "done")
    assert found.answers[1].sign == (
        "Slow: The sponge darkens within ten seconds; or Fast: The chamber shallows while you look"
    )


def test_the_place_says_phase_and_step_and_mark() -> None:
    where = view("fast", "done", "calm").where
    assert (where.phase, where.phase_number, where.phases, where.step_number) == (
        "Close the eye",
        2,
        2,
        4,
    )
    assert where.marks == ("DRAFT",)


def test_a_pathway_past_its_review_shows_expired_and_where_it_comes_back_to() -> None:
    where = view("fast", "done", "sore", "done").where
    assert where.marks == ("EXPIRED",)
    assert where.back_to == "Leaking wound at the end of surgery"


def test_lines_keep_their_order_and_neighbours_of_one_duty_stand_together() -> None:
    duties = view("fast").duties
    assert [(duty.who, [line.said_aloud for line in duty.instructions]) for duty in duties] == [
        ("Surgeon", [False, False]),
        ("Scrub practitioner", [True]),
        ("Surgeon", [True]),
    ]


def test_cautions_come_before_the_step_and_are_paired() -> None:
    text = told(view("fast"))
    assert text.index("DANGER: ") < text.index("Instead: ") < text.index("DO  ")


def test_a_caution_on_a_later_act_says_which() -> None:
    found = view("fast", "done", "calm", "done")
    assert found.cautions[0].before == "Suture the wound"
    assert "CAUTION: Before “Suture the wound”" in told(found)


def test_a_local_target_is_never_a_benchmark() -> None:
    assert "Local target 30 s, not a published benchmark." in told(view("fast"))


def test_a_choice_not_set_shows_every_position_with_its_sources() -> None:
    text = told(view("fast"), 200)
    assert f"{NOT_SET}: Filling the chamber" in text
    assert "Fluid: Fill with balanced salt solution. (Handbook of small wounds" in text
    assert "[memory]" in text
    assert "Suggested: Fluid, because: Most units read fluid." in text


def test_a_choice_the_unit_has_set_shows_what_it_chose() -> None:
    pathway = loaded().library.pathways["leaking-wound"]
    finding = pathway.words.findings["air-or-fluid"]
    assert finding.choice
    chosen = replace(finding, choice=replace(finding.choice, chosen="air"))
    words = replace(pathway.words, findings={**pathway.words.findings, finding.id: chosen})
    library = loaded().library
    local = Library(library.shared, {**library.pathways, pathway.id: replace(pathway, words=words)})
    walk = make(set_out(local, pathway.id, "", MORNING), Answered("fast"), MORNING)
    text = told(step_view(walk, TODAY))
    assert "Filling the chamber: Air (set by this unit)" in text
    assert NOT_SET not in text


def test_a_bound_is_told_as_a_round() -> None:
    assert "Round 1 of 2." in told(view("fast", "done", "calm"))
    last = told(view("fast", "done", "calm", "done", "still-leaking"))
    assert "Round 2 of 2; after this the pathway goes another way." in last


def test_a_stale_question_says_which_act_made_it_so_and_what_was_seen() -> None:
    found = view("fast", "done", "calm", "done")
    assert found.asked_again == (
        "Asked again: “Hydrate the wound” may have changed it. Last seen: Fast."
    )


def test_a_finding_that_changes_by_itself_blames_no_act() -> None:
    found = view("fast", "done", "sore", "done", "done")
    assert found.asked_again == (
        "Asked again: it may change by itself, and since then: “Call for help”. Last seen: Sore."
    )


@pytest.mark.parametrize(
    ("typed", "line"),
    [
        (("fast", "done", "sore", "done", "done", "calm"), "Back from Restless patient: "),
        (
            ("fast", "done", "calm", "done", "still-leaking", "done", "still-leaking"),
            "Tried 2 times, the most allowed here: ",
        ),
        (("none",), "Not decided by what is known, so the safe way: Chamber depth: unknown"),
        (
            ("fast", "done", "calm", "done", "none"),
            "Decided by what is known: Chamber depth: Deep",
        ),
    ],
)
def test_what_was_passed_silently_is_told(typed: tuple[str, ...], line: str) -> None:
    assert any(passed.startswith(line) for passed in view(*typed).passed)


def test_an_outcome_owes_what_passed_outcomes_owed_as_well() -> None:
    found = view("fast", "done", "sore", "done", "done", "calm", "done", "none")
    assert found.kind is StepKind.OUTCOME
    assert [owed.what for owed in found.owed] == [
        "Write down what was given.",
        "Record how the wound was closed.",
        "Tell the patient.",
    ]
    assert "[ ] Surgeon: Tell the patient. (the same day)" in told(found)


def test_one_instruction_is_the_headline_itself() -> None:
    found = view("fast", "done", "calm")
    assert text_lines(head(found), 78) == ["DO  Surgeon: Hydrate both edges of the wound."]
    said = view("fast", "done", "sore", "done")
    assert text_lines(head(said), 78) == ["SAY  Surgeon: “We stop for a moment.”"]


def steps_of(found: Loaded) -> Iterator[Walk]:
    """Yield a walk on each action and handover of a library."""
    library = found.library
    for pathway in library.pathways.values():
        walk = set_out(library, pathway.id, "", MORNING)
        for name, step in pathway.steps.items():
            if isinstance(step, Action | Handover):
                state = replace(walk.state, place=Place(pathway.id, name))
                yield replace(walk, first=replace(walk.first, state=state))


@pytest.mark.parametrize("density", Density)
def test_every_instruction_of_every_shipped_step_says_whose_it_is(density: Density) -> None:
    seen = 0
    for walk in steps_of(load_library(SHIPPED)):
        found, step = step_view(walk, TODAY), walk.step
        lines = text_lines([*head(found), *body(found, density)], 10_000)
        words = walk.library.words(walk.state.place.pathway)
        due = [(READER, walk.step.says)] if isinstance(step, Handover) else []
        if isinstance(step, Action):
            due = [(duty_title(words, line.who), line.text) for line in step.lines]
        for who, text in due:
            seen += 1
            at = [number for number, line in enumerate(lines) if text in line]
            assert any(_speaks(lines, number, who) for number in at), (step.id, who, text)
    assert seen > 100


def _speaks(lines: list[str], number: int, who: str) -> bool:
    """Whether a line names who it is for, or stands in the block under that name."""
    if f"{who}: " in lines[number] or f"{who} says: " in lines[number]:
        return True
    above = (line for line in reversed(lines[:number]) if not line.startswith("  "))
    return next(above, "") == who


@pytest.mark.parametrize("size", [(58, 13), (78, 18), (84, 34)])
def test_every_duty_is_named_at_every_size(size: tuple[int, int]) -> None:
    for walk in steps_of(load_library(SHIPPED)):
        found = step_view(walk, TODAY)
        page = arrange(found, *size)
        text = "\n".join(text_lines([*page.card, *page.body], 10_000))
        assert all(duty.who in text for duty in found.duties), walk.state.place


@pytest.mark.parametrize("density", Density)
def test_every_density_says_the_same_things(density: Density) -> None:
    for found in (view(), view("fast")):
        text = " ".join(" ".join(text_lines(body(found, density), 300)).split())
        for answer in found.answers:
            assert answer.label in text
            assert answer.sign in text
        for duty in found.duties:
            assert all(line.text in text for line in duty.instructions)
