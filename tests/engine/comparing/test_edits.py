"""Forty small edits as two people make them in a year, each with the rating it has to get."""

from __future__ import annotations

import pytest
from chamberwise.engine.comparing.change import Change, Kind, Rating
from chamberwise.engine.comparing.compare import compare

from tests.engine.comparing.versions import NOTHING_PRINTED, PATHWAY, Version, compared, new, old
from tests.support.build import TODAY

S, P, E = Rating.SAFETY, Rating.PROCEDURAL, Rating.EDITORIAL

EDITS = [
    # what is done
    (S, "an act is gone", "Withdraw the tip., act: withdraw-tip", "Withdraw the tip."),
    (S, "another act", "side port., act: fill-chamber", "side port., act: withdraw-tip"),
    (S, "a verb turned", "does: Withdraw the tip.", "does: Advance the tip."),
    (S, "another way in", "Fill the chamber through the side port.", "Fill it through the wound."),
    (S, "somebody else", "surgeon, does: Sweep the iris", "assistant, does: Sweep the iris"),
    (S, "a quantity", "does: Hydrate both edges", "does: Hydrate 2 edges"),
    (P, "other words", "Hydrate both edges of", "Hydrate both borders of"),
    (E, "a spelling", "Sweep the iris from", "Sweep the  Iris from"),
    (P, "a line without an act", "says: The suture is ready.", "says: We have it."),
    (S, "when it is owed", "closed., when: before leaving", "closed., when: after leaving"),
    (
        S,
        "when it is owed, by number",
        "closed., when: before leaving theatre",
        "closed., when: within 2 hours",
    ),
    # what is decided
    (S, "an answer leads elsewhere", "inside: how-deep", "inside: sweep"),
    (S, "nobody can tell", "cannot tell: refer", "cannot tell: by-depth-and-iris"),
    (S, "values told apart no more", "means: [slow, fast]", "means: [fast]"),
    (S, "a question turned round", "Are the lids loose?", "Are the lids not loose?"),
    (P, "a question in other words", "Does the wound leak?", "Does the wound weep?"),
    (S, "a branch", "{depth: deep, iris: outside}", "{depth: deep}"),
    (
        S,
        "another bound",
        "at most: 2\n    after that: suture",
        "at most: 3\n    after that: suture",
    ),
    (S, "another exit", "after that: suture", "after that: refer"),
    (S, "where it comes back", "lids-are-tight: refer", "lids-are-tight: fill"),
    # what is known
    (S, "an effect is gone", "    makes stale: [depth]\n", ""),
    (S, "another effect", "makes known: {leak: none}", "makes known: {leak: slow}"),
    (
        S,
        "an effect of a shared act",
        "Sweep the iris, sources",
        "Sweep it, makes stale: [iris], sources",
    ),
    (S, "it calls nobody", "Call for help, calls for help: yes", "Call for help"),
    (
        S,
        "it stays as it is",
        "about: patient\n    may change by itself: yes\n    values:\n      loose",
        "about: patient\n    values:\n      loose",
    ),
    # what is warned of
    (S, "a weaker word", "- danger: The chamber collapses", "- notice: The chamber collapses"),
    (S, "a caution turned", "Keep the tip still until", "Keep the tip moving until"),
    (S, "another remedy", "instead: Wet the instrument first.", "instead: Use another instrument."),
    (P, "a caution spelt otherwise", "A dry instrument clings", "A dry instrumment clings"),
    (S, "a rule asks for less", "{outcome: [closed], unless known: [depth]}", "{outcome: refer}"),
    # what stands beside it
    (E, "a reason in other words", "A normal pressure keeps", "A healthy pressure keeps"),
    (P, "a reason denied", "A normal pressure keeps infection out.", "It does not help."),
    (S, "an amount", "amount: 1 pack", "amount: 2 packs"),
    (P, "other kit", "needs: [suture]", "needs: [cannula]"),
    (P, "a time target", "time target: 30 s", "time target: 60 s"),
    (
        P,
        "evidence",
        "    sources: [handbook]\n    go to: how-are",
        "    sources: [recalled]\n    go to: how-are",
    ),
    (P, "another mark", "chapter 2', mark: read", "chapter 2', mark: memory"),
    (S, "another sign", "A dry sponge stays dry", "A dry sponge stays wet"),
    (E, "the edition", "edition: 0.4", "edition: 0.5"),
    (P, "its standing", "status: draft", "status: clinical review"),
    (P, "its review", "review by: 2027-11-25", "review by: 2028-11-25"),
    (P, "a choice is made", "    suggested: fluid\n", "    suggested: fluid\n    chosen: air\n"),
    (E, "a summary", "that shallows while", "that flattens while"),
    (P, "a column of the plan", "plan: {iris: Stroked back}", "plan: {iris: Put back}"),
]
SAME_IN_MEANING = [
    ("a comment", "title: Shallow chamber", "# Read by the lead.\ntitle: Shallow chamber"),
    ("quotes", "title: Shallow chamber", 'title: "Shallow chamber"'),
    ("the order of keys", "edition: 0.4\nstatus: draft", "status: draft\nedition: 0.4"),
    ("a list in a block", "needs: [suture]", "needs:\n      - suture"),
    ("a mapping in a block", "plan: {end: Closed}", "plan:\n      end: Closed"),
    ("a comment at the end", "go to: tuck", "go to: tuck  # out again"),
    ("empty lines", "\nphases:\n  hold: Hold\n", "\n\n\nphases:\n\n  hold: Hold\n"),
    (
        "folded text",
        "why: A normal pressure keeps infection out.",
        "why: >-\n      A normal pressure\n      keeps infection out.",
    ),
]


def gravest(found: tuple[Change, ...]) -> Rating:
    return found[0].rating


@pytest.mark.parametrize(("rating", "what", "was", "now"), EDITS, ids=[each[1] for each in EDITS])
def test_each_edit_is_rated_as_it_has_to_be(rating: Rating, what: str, was: str, now: str) -> None:
    found = compared((was, now)).changes
    assert found, what
    assert gravest(found) is rating, (what, found)


@pytest.mark.parametrize(("rating", "what", "was", "now"), EDITS, ids=[each[1] for each in EDITS])
def test_taken_back_each_edit_is_as_grave(rating: Rating, what: str, was: str, now: str) -> None:
    sides = Version(new((was, now)), PATHWAY), Version(old(), PATHWAY)
    assert gravest(compare(*sides, NOTHING_PRINTED, TODAY).changes) is rating, what


@pytest.mark.parametrize(("what", "was", "now"), SAME_IN_MEANING)
def test_what_changes_only_the_text_of_the_file_changes_nothing(
    what: str, was: str, now: str
) -> None:
    assert compared((was, now)).is_same, what


def test_made_one_after_the_other_nothing_drifts() -> None:
    """Each edit, made on top of all before it that it fits on, is told as it is told alone."""
    done: list[tuple[str, str]] = []
    before = old()
    told = 0
    for rating, what, was, now in EDITS:
        try:
            after = new(*done, (was, now))
        except (AssertionError, ValueError):
            continue  # an earlier edit has changed the very place
        sides = Version(before, PATHWAY), Version(after, PATHWAY)
        assert gravest(compare(*sides, NOTHING_PRINTED, TODAY).changes) is rating, what
        done.append((was, now))
        before = after
        told += 1
    assert told > len(EDITS) * 3 // 4


def test_a_library_beside_itself_has_not_changed() -> None:
    found = compared()
    assert found.is_same
    assert found.touched.printed == found.touched.rehearsed == ()


def test_a_pathway_that_is_handed_over_to_counts_as_grave_as_it_changed() -> None:
    """Nothing in the file compared changed, yet its walks meet something else."""
    (change,) = compared(("Put one drop on the eye.", "Put two drops on the eye.")).changes
    assert (change.kind, change.rating) == (Kind.HANDOVER, S)
    assert "compare that one too" in change.why


def test_a_shared_word_used_over_there_counts_too() -> None:
    """It also ends the approval of the pathway over there, which was given to other words."""
    edit = (
        "numb-eye: {title: Numb the eye,",
        "numb-eye: {title: Numb the eye, makes stale: [lids],",
    )
    effect, ended = compared(edit).changes
    assert (effect.kind, effect.rating) == (Kind.EFFECT, S)
    assert (ended.kind, ended.rating, ended.at.pathway) == (Kind.HANDOVER, P, "pressing-lids")
