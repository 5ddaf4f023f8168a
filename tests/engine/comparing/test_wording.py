"""What another wording weighs: numbers, units, negations and turning words are never spelling."""

from __future__ import annotations

import pytest
from chamberwise.engine.checks.wording.rule import TextKind
from chamberwise.engine.comparing.change import Rating
from chamberwise.engine.comparing.wording import reworded
from hypothesis import given
from hypothesis import strategies as st

S, P, E = Rating.SAFETY, Rating.PROCEDURAL, Rating.EDITORIAL
DONE, WHY, CAUTION = TextKind.INSTRUCTION, TextKind.REASON, TextKind.CAUTION

TABLE = [
    (S, DONE, "Inject 0.1 mL.", "Inject 1 mL."),
    (S, DONE, "Give 1 mg.", "Give 1 g."),
    (S, DONE, "Give 5 to 10 mg.", "Give 10 to 5 mg."),
    (S, WHY, "The ceiling is 3 mg per kg.", "The ceiling is 4 mg per kg."),
    (P, WHY, "It happens in 2 of 100.", "It happens in 3 of 100."),
    (S, DONE, "Dilute 1:10.", "Dilute 1:100."),
    (S, DONE, "Do not pull.", "Pull."),
    (S, DONE, "Give no more than 2 mL.", "Give no less than 2 mL."),
    (S, DONE, "Fill before you withdraw.", "Withdraw before you fill."),
    (S, DONE, "Fill and hold.", "Fill or hold."),
    (S, DONE, "Suture the left eye.", "Suture the right eye."),
    (S, DONE, "Draw up cefuroxime.", "Draw up moxifloxacin."),
    (S, DONE, "Inject 1 mL of red dye.", "Inject 1 mL of blue dye."),
    (S, CAUTION, "The lens sinks.", "The lens floats."),
    (P, CAUTION, "The anaesthetic fails.", "The anesthetic fails."),
    (E, DONE, "Colour the capsule.", "Color the capsule"),
    (E, DONE, "Use the side port.", "Use the side-port."),
    (E, DONE, "Don't pull.", "Do not pull."),
    (E, DONE, "Give 1,000 units.", "Give 1000 units."),
    (E, DONE, "Give 1.0 mL.", "Give 1 ml."),
    (E, DONE, "Give 10 micrograms.", "Give 10 mcg."),
    (E, DONE, "Watch the visocelastic.", "Watch the viscoelastic."),
    (E, DONE, "Please watch the pupil.", "Watch the pupil."),
    (E, WHY, "This is because it may tear.", "The reason is that it may tear."),
    (P, DONE, "Thank the team.", "Thank the crew."),
    (P, WHY, "It does not tear.", "It tears."),
    # the same in other words
    (E, DONE, "Look in two weeks.", "Look in 2 weeks."),
    (E, DONE, "Third round done.", "3rd round done."),
    (E, DONE, "Read drug, mg per mL and volume.", "Read drug, mg/mL and volume."),
    (E, DONE, "Hold the patient's hand.", "Hold the hand of the patient."),
    (P, DONE, "Give 0.1 mg per mL.", "Give 100 micrograms per mL."),
    (P, DONE, "Look in two weeks.", "Look in 14 days."),
    (P, DONE, "Suture the wound at once.", "Stitch the wound immediately."),
    (P, CAUTION, "It tears retina.", "It tears the retina."),
    (P, TextKind.SIGN, "Eye soft, red reflex even", "Even red reflex, soft eye"),
    # and what only looks so
    (S, DONE, "Give 10 mg per mL.", "Give 10 micrograms per mL."),
    (S, DONE, "Look in two weeks.", "Look in 2 days."),
    (S, DONE, "Wait 60 s.", "Wait 60."),
    (S, DONE, "The surgeon tells the assistant.", "The assistant tells surgeon."),
    (S, DONE, "Treat pain before sickness.", "Treat sickness before pain."),
    (S, TextKind.SIGN, "Tear in front of lens", "Lens in front of tear"),
    (S, DONE, "Hold the lens.", "Hold the piece."),
    (S, DONE, "State who operates.", "May state who operates."),
    (S, CAUTION, "Let the piece go.", "Let the piece not go."),
]


@pytest.mark.parametrize(("rating", "kind", "was", "now"), TABLE)
def test_the_table(rating: Rating, kind: TextKind, was: str, now: str) -> None:
    assert reworded(was, now, kind).rating is rating
    assert reworded(now, was, kind).rating is rating


LETTERS = st.text("abcdefgh ,.'-", max_size=30)


@given(LETTERS, st.integers(0, 10**6), st.integers(0, 10**6), LETTERS, st.sampled_from(TextKind))
def test_another_number_is_never_editorial(
    before: str, one: int, other: int, after: str, kind: TextKind
) -> None:
    was, now = f"{before} {one} mL {after}", f"{before} {other} mL {after}"
    assert (reworded(was, now, kind).rating is S) == (one != other)


@given(st.text(max_size=40), st.sampled_from(TextKind))
def test_spaces_and_capitals_are_always_editorial(text: str, kind: TextKind) -> None:
    spaced = f"  {'  '.join(text.split(' '))} "
    assert reworded(text, spaced, kind).rating is E


@given(st.text(max_size=40), st.text(max_size=40), st.sampled_from(TextKind))
def test_taken_back_an_edit_weighs_the_same(one: str, other: str, kind: TextKind) -> None:
    assert reworded(one, other, kind) == reworded(other, one, kind)
