"""What somebody in fright typed at ten drills of each book, and what each line was to be taken for.

The lines were typed before the words for them were looked at (common practice, no source). Each was
misheard, asked about or lost when it was first typed.
"""

from __future__ import annotations

import pytest
from chamberwise.engine.drill.entries import Did, NotUnderstood, Recognised
from chamberwise.engine.drill.taking import Typed, choose, take
from chamberwise.engine.drill.wording.matching import understand
from chamberwise.engine.drill.wording.phrasebook import Target, phrasebook_of
from chamberwise.engine.drill.wording.understood import Understood

from tests.engine.drill.stage import RUPTURE, scenario, typed

FILL = "fill-with-dispersive-viscoelastic"
BOOKS = {name: phrasebook_of(scenario(None, 3, name)) for name in (RUPTURE, "dropped-nucleus")}


def meant(line: str, pathway: str = RUPTURE) -> Understood:
    return understand(BOOKS[pathway], line)


def names(targets: tuple[Target, ...]) -> list[str]:
    return [each.act or f"?{each.finding}" for each in targets]


@pytest.mark.parametrize(
    ("line", "taken"),
    [
        ("stop stop everything foot off", ["stop-aspiration"]),
        ("um i think we have a pcr guys", ["announce-rupture"]),
        ("ive torn the pc", ["announce-rupture"]),
        ("it's a posterior capsular tear everybody", ["announce-rupture"]),
        (
            "pcr guys get the box and call the consultant",
            ["announce-rupture", "fetch-box", "call-for-help"],
        ),
        ("the capsule is open so I hold still", ["announce-rupture", "hold-tip-still"]),
        ("pull the phaco out", ["withdraw-tip"]),
        ("take the phaco out gently", ["withdraw-tip"]),
        ("fill it right up then im coming out", [FILL, "withdraw-tip"]),
        ("someone ring the consultant", ["call-for-help"]),
        ("someone phone for help please, and get the pcr box", ["call-for-help", "fetch-box"]),
        ("sir please dont move keep still for me", ["tell-patient-to-keep-still"]),
        ("any nucleus?", ["?nucleus-front"]),
        ("vitreous?", ["?vitreous"]),
    ],
)
def test_what_is_plain_is_taken(line: str, taken: list[str]) -> None:
    found = meant(line)
    assert (names(found.taken), found.asked) == (taken, ())


@pytest.mark.parametrize(
    ("line", "taken"),
    [
        ("dispersive ovd side port fill", [FILL]),
        ("nobody touches the piece at the back", ["leave-piece"]),
        ("no leave it", ["leave-piece"]),
        ("call the vr surgeon next door", ["call-vitreoretinal"]),
    ],
)
def test_so_it_is_where_a_piece_drops(line: str, taken: list[str]) -> None:
    assert names(meant(line, "dropped-nucleus").taken) == taken


@pytest.mark.parametrize(
    ("line", "taken"),
    [
        ("hold still because the tip is the plug, call the senior", "call-for-help"),
        ("hold still because it tears, and vitreous comes, call the senior", "call-for-help"),
        ("hold still cos it will drop, get the box", "fetch-box"),
    ],
)
def test_an_order_behind_a_reason_in_the_middle_is_heard(line: str, taken: str) -> None:
    assert names(meant(line).taken) == ["hold-tip-still", taken]


@pytest.mark.parametrize(
    "line",
    [
        "hold still because it tears, and vitreous comes forward",
        "hold still because the chamber falls, the tip comes out",
        "hold still because if I pull, it tears",
    ],
)
def test_a_reason_in_several_parts_stays_a_reason(line: str) -> None:
    assert not {"withdraw-tip", "pull-at-vitreous"} & set(names(meant(line).taken))


def test_a_wrong_act_behind_a_reason_is_asked_about_and_not_lost() -> None:
    found = meant("hold still because it tears, carry on with the piece")
    assert found.taken == ()
    assert {"hold-tip-still", "take-one-more-piece"} <= set(names(found.asked))


@pytest.mark.parametrize(
    ("line", "both"),
    [
        ("dispersive underneath the quadrants", {"cover-tear", "lift-pieces"}),
        ("put some dispersive under the pieces", {"cover-tear", "lift-pieces"}),
        ("dispersive beneath the fragment", {"cover-tear"}),
        ("read the label first", {"read-stain-aloud", "check-lens-aloud"}),
        ("tell the consultant I'm fine", {"call-for-help"}),
        ("open the capsule", set()),
    ],
)
def test_what_may_be_one_of_two_near_acts_is_asked(line: str, both: set[str]) -> None:
    found = meant(line)
    assert found.taken == ()
    assert both <= set(names(found.asked))


@pytest.mark.parametrize("line", ["oh god", "shit", "hang on thats odd", "ok keep calm everyone"])
def test_fright_is_heard_and_nothing_comes_of_it(line: str) -> None:
    drill = typed(scenario(), ["hold still"])
    after = take(drill, Typed(line, drill.stands[-1][1].at + 1000))
    assert after.drill == drill
    assert (after.asked, after.seen, len(after.said)) == ((), (), 1)


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("where's the quadrant gone", False),
        ("dropped nucleus box", False),
        ("lost it guys, last quadrant's fallen", True),
    ],
)
def test_who_asks_where_a_piece_is_or_for_a_box_has_not_said_it(line: str, says: bool) -> None:
    assert meant(line, "dropped-nucleus").says_trigger is says


def test_several_of_what_was_meant_are_done_in_the_order_they_were_chosen_in() -> None:
    drill = typed(scenario("fifth-of-six"), ["hold still"])
    at = drill.stands[-1][1].at + 1000
    both = (Target(act=FILL), Target(act="withdraw-tip"))
    done = choose(drill, both, Typed("visco then out with it", at)).drill
    acts = [each.act for each in done.journal if isinstance(each, Did)]
    assert acts == ["hold-tip-still", FILL, "withdraw-tip"]
    assert done.standing.consequences == ()
    assert len(choose(drill, both[::-1], Typed("out, visco", at)).drill.standing.consequences) == 1


def test_what_was_said_aloud_is_not_asked_for_once_more() -> None:
    drill = typed(scenario("fifth-of-six"), ["um i think we have a pcr guys"])
    assert [type(each) for each in drill.journal[-2:]] == [Recognised, Did]
    assert not any(isinstance(each, NotUnderstood) for each in drill.journal)


def test_a_top_up_that_does_not_say_of_what_is_asked_about() -> None:
    """Taken for the block it gave an injection that nobody had asked for."""
    found = meant("top it up", "dropped-nucleus")
    assert found.taken == ()
    assert {FILL, "top-up-block"} <= set(names(found.asked))
    assert names(meant("top up the block").taken) == ["top-up-block"]


@pytest.mark.parametrize(
    ("line", "taken"),
    [
        ("posterior capsule rupture, everybody stop", ["announce-rupture", "stop-aspiration"]),
        ("the posterior capsule is open, hold still", ["announce-rupture", "hold-tip-still"]),
        ("posterior capsule rupture everybody stop", ["announce-rupture", "stop-aspiration"]),
        ("tell the patient what happened", ["tell-patient"]),
        ("tell the patient what happens next", ["tell-patient-to-keep-still"]),
    ],
)
def test_what_is_said_in_so_many_words_is_taken(line: str, taken: list[str]) -> None:
    found = meant(line)
    assert (names(found.taken), found.asked, found.left_open) == (taken, (), "")


@pytest.mark.parametrize("pathway", BOOKS)
def test_every_act_is_taken_by_its_own_title(pathway: str) -> None:
    of, book = scenario(None, 3, pathway), BOOKS[pathway]
    acts = {each.target.act for each in book.phrases if each.target.act}
    asked = [act for act in acts if understand(book, of.title_of(act)).taken != (Target(act=act),)]
    assert asked == []


def test_of_a_line_half_understood_the_other_half_is_named() -> None:
    drill = typed(scenario("fifth-of-six"), [])
    after = take(drill, Typed("capsule's gone, get bob", drill.stands[-1][1].at + 1000))
    assert any("“get bob”" in each for each in after.said)
    lost = [each.typed for each in after.drill.journal if isinstance(each, NotUnderstood)]
    assert lost == ["get bob"]


def test_to_ask_whether_it_is_so_offers_nothing_else() -> None:
    assert meant("is the capsule open?").asked == ()


@pytest.mark.parametrize("line", ["hmm", "um", "erm, hang on"])
def test_who_hums_has_said_nothing_that_a_program_should_understand(line: str) -> None:
    drill = typed(scenario("fifth-of-six"), [line])
    assert not any(isinstance(each, NotUnderstood) for each in drill.journal)
