"""Typed words: mapped where they can be, asked where not, never turned round."""

from __future__ import annotations

import pytest
from chamberwise.engine.drill.entries import Certainty
from chamberwise.engine.drill.scenario import Scenario
from chamberwise.engine.drill.wording.matching import understand
from chamberwise.engine.drill.wording.phrasebook import Phrasebook, Target, phrasebook_of

from tests.engine.drill.stage import scenario, shipped

OF: Scenario = scenario()
BOOK: Phrasebook = phrasebook_of(OF)

FILL = "fill-with-dispersive-viscoelastic"


def taken(typed: str) -> list[str]:
    return [each.act or f"?{each.finding}" for each in understand(BOOK, typed).taken]


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("freeze, don't move", ["hold-tip-still"]),
        ("don't take the tip out", ["hold-tip-still"]),
        ("keep the tip in", ["hold-tip-still"]),
        ("never pull it out", ["hold-tip-still"]),
        ("do not withdraw the phaco probe", ["hold-tip-still"]),
        ("take the tip out", ["withdraw-tip"]),
        ("stop sucking", ["stop-aspiration"]),
        ("stop", ["stop-aspiration"]),
        ("fil the chamber wiht viscoelastc", [FILL]),
        ("fill the chamber before taking the tip out", [FILL]),
        (
            "instead of withdrawing fill the chamber",
            ["hold-tip-still", FILL],
        ),
        ("don't come out until the chamber is filled", ["hold-tip-still"]),
        (
            "stop, hold still, fill with OVD and call the consultant",
            [
                "stop-aspiration",
                "hold-tip-still",
                FILL,
                "call-for-help",
            ],
        ),
        (
            "leave the tip in while the assistant injects ovd",
            ["hold-tip-still", FILL],
        ),
        ("you carry on", ["agree-who-operates"]),
        ("carry on", ["take-one-more-piece"]),
        ("where's the vitreous", ["?vitreous"]),
        ("is the vitrector ready", ["?cutter"]),
        ("get the vitrector ready", ["prepare-cutter"]),
        ("put the one piece lens in the sulcus", ["place-single-piece-lens-in-sulcus"]),
        ("3 piece IOL in sulcus", ["place-lens-in-sulcus"]),
        ("don't put a lens in", ["leave-aphakic"]),
        ("eat a banana", []),
        ("don't rotate the nucleus", []),
        ("don't use a sponge", []),
        ("don't fill the chamber", []),
        ("don't stop aspirating", []),
        ("", []),
        ("1", []),
        ("oh no, the capsule has gone", ["announce-rupture"]),
        ("PCR! Stop everything", ["announce-rupture", "stop-aspiration"]),
        ("stop hydro", ["stop-aspiration"]),
    ],
)
def test_what_words_are_taken_for(typed: str, meant: list[str]) -> None:
    assert taken(typed) == meant


@pytest.mark.parametrize(
    "typed",
    [
        "withdraw after filling",
        "once the chamber is full, come out",
        "after filling with ovd remove the probe",
    ],
)
def test_what_belongs_before_is_done_before(typed: str) -> None:
    meant = understand(BOOK, typed)
    assert meant.first == (Target(act="fill-with-dispersive-viscoelastic"),)
    assert meant.taken == (Target(act="withdraw-tip"),)


@pytest.mark.parametrize(
    ("typed", "certainty"),
    [
        ("hold still /sure", Certainty.SURE),
        ("hold still! /likely", Certainty.LIKELY),
        ("hold still /GUESS ", Certainty.GUESS),
        ("hold still!", None),
        ("hold still!!!", None),
        ("hold still", None),
    ],
)
def test_a_word_of_its_own_at_the_end_says_how_sure_somebody_is_and_nothing_else_does(
    typed: str, certainty: Certainty | None
) -> None:
    assert understand(BOOK, typed).certainty is certainty
    assert taken(typed) == ["hold-tip-still"]


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("the capsule has gone", True),
        ("I think we have a PCR", True),
        ("posterior capsule rupture, hold still", True),
        ("PCR, get the box", True),
        ("rupture box please", False),
        ("get me the PCR trolley", False),
        ("read the rupture chart", False),
        ("open the capsule", False),
        ("don't say the capsule is open", False),
        ("not a rupture", False),
        ("the capsule is not open", False),
        ("fill the chamber", False),
        ("inspect the capsule", False),
    ],
)
def test_the_trigger_is_heard_in_any_words(typed: str, says: bool) -> None:
    assert understand(BOOK, typed).says_trigger is says


PHRASES = [
    (phrase, target)
    for target, texts in [
        (Target(act=act), texts) for act, texts in shipped()[1].phrases.acts.items()
    ]
    for phrase in texts
    if any(each.target == target for each in BOOK.phrases)
]


def test_every_phrase_means_its_act_or_is_asked() -> None:
    wrong = {}
    for phrase, target in PHRASES:
        meant = understand(BOOK, phrase)
        if target not in (*meant.taken, *meant.asked):
            wrong[phrase] = meant
    assert wrong == {}


def test_a_phrase_is_never_taken_for_an_act_of_the_other_kind() -> None:
    """No harmful act is taken for a safe one, and no safe one for a harmful one."""
    for phrase, target in PHRASES:
        for each in understand(BOOK, phrase).taken:
            assert BOOK.is_harmful(each) is BOOK.is_harmful(target), (phrase, each)


def test_a_phrase_that_is_asked_about_never_begins_with_the_other_kind() -> None:
    for phrase, target in PHRASES:
        asked = understand(BOOK, phrase).asked
        if asked and not BOOK.is_harmful(target):
            assert not BOOK.is_harmful(asked[0]), phrase


@pytest.mark.parametrize(
    "denial", ["don't", "do not", "never", "I would not", "avoid to", "no need to"]
)
def test_what_is_denied_is_never_done(denial: str) -> None:
    says_not = {each.target for each in BOOK.phrases if each.is_negative}
    for phrase, target in PHRASES:
        if target in says_not or any(word in phrase for word in ("not ", "no ", "stop", "without")):
            continue
        meant = understand(BOOK, f"{denial} {phrase}")
        assert target not in (*meant.taken, *meant.first, *meant.asked), (denial, phrase)
        assert not any(BOOK.is_harmful(each) for each in meant.taken), (denial, phrase)


@pytest.mark.parametrize(
    ("typed", "not_meant"),
    [
        ("recalc the IOL for the sulcus", "place-lens-in-sulcus"),
        ("raise the pieces", "raise-infusion"),
        ("put in an anterior chamber IOL", FILL),
        ("suture the IOL to the sclera", "suture-main-wound"),
    ],
)
def test_another_thing_in_the_same_words_is_not_even_offered_first(
    typed: str, not_meant: str
) -> None:
    understood = understand(BOOK, typed)
    assert Target(act=not_meant) not in (*understood.taken, *understood.asked[:1])


@pytest.mark.parametrize("typed", ["finish the last piece with phaco", "carry on with the pieces"])
def test_what_is_right_later_and_wrong_at_first_is_asked(typed: str) -> None:
    understood = understand(BOOK, typed)
    assert understood.taken == ()
    assert Target(act="phaco-fragment") in understood.asked
