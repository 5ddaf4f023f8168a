"""The key of a walk: back to the same walk, or a plain word on why not."""

from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.engine.keys.base32 import SIGNS, SURE_UP_TO, number_of, written
from chamberwise.engine.meaning.advance import advance, begin, moves
from chamberwise.engine.meaning.state import Answered, Done, Move
from chamberwise.engine.proof.replay_key import (
    CONTENT,
    COUNTED_BY,
    MOST_MOVES,
    NAME,
    ChangedSinceError,
    MistypedError,
    NoLongerLegalError,
    NoSuchPathwayError,
    key_of,
    moves_of,
)
from chamberwise.engine.reading.library import Loaded, load_library
from hypothesis import given
from hypothesis import strategies as st

from tests.support.build import do, library, pathway
from tests.support.strategies import libraries, picks
from tests.support.subjects import loaded as as_loaded
from tests.support.walking import random_walk

TOP = Path(__file__).parents[3]
SHIPPED = load_library(TOP / "protocols")
SMALL = load_library(TOP / "tests" / "tui" / "library")
WALK = ("slow", "still-leaking", "cannot tell")


def made(loaded: Loaded, pathway: str, answers: tuple[str, ...]) -> tuple[Move, ...]:
    """Return the moves that give some answers in turn, everything else being done."""
    state, found, left = begin(loaded.library, pathway).state, [], list(answers)
    while left or Answered(answers[-1]) not in found:
        legal = moves(loaded.library, state)
        move = Answered(left.pop(0)) if isinstance(legal[0], Answered) else legal[0]
        found.append(move)
        state = advance(loaded.library, state, move)
    return tuple(found)


@given(libraries() | libraries(tame=False), picks)
def test_any_walk_comes_back_from_its_key(library: object, chosen: list[int]) -> None:
    loaded = as_loaded(library)  # type: ignore[arg-type]
    for name in loaded.library.pathways:
        walked = tuple(leg.move for leg in random_walk(loaded.library, name, chosen))
        key = key_of(loaded, name, walked)
        assert moves_of(loaded, key, loaded.library.pathways) == (name, walked)


@given(st.sampled_from(list(SHIPPED.library.pathways)), st.lists(st.integers(0, 4), max_size=80))
def test_keys_of_the_shipped_pathways_are_short_enough_to_type(
    name: str, chosen: list[int]
) -> None:
    walked = tuple(leg.move for leg in random_walk(SHIPPED.library, name, chosen))
    key = key_of(SHIPPED, name, walked)
    assert moves_of(SHIPPED, key, SHIPPED.library.pathways) == (name, walked)
    assert len(key) <= 12 + len(walked)
    assert all(len(group) <= 4 for group in key.split("-"))
    assert set(key) <= {*SIGNS, "-"}


def test_keys_written_down_stay_good() -> None:
    key = written(0b1011001 * NAME + 5, least=6)
    assert key == "002S-053W"
    assert number_of(key) == 0b1011001 * NAME + 5


def test_a_key_may_be_typed_carelessly() -> None:
    walked = made(SMALL, "leaking-wound", WALK)
    key = key_of(SMALL, "leaking-wound", walked)
    careless = key.lower().replace("0", "o").replace("1", "l").replace("-", " ")
    assert moves_of(SMALL, careless, ["leaking-wound"])[1] == walked
    assert moves_of(SMALL, key.replace("1", "i").replace("-", ""), ["leaking-wound"])[1] == walked


@pytest.mark.parametrize("number", [0, 1, 2**40 - 7, 3**88])
def test_every_single_sign_mistyped_is_noticed(number: int) -> None:
    signs = written(number, least=6).replace("-", "")
    assert len(signs) <= SURE_UP_TO
    for at, right in enumerate(signs):
        wrong = [signs[:at] + each + signs[at + 1 :] for each in SIGNS if each != right]
        assert [each for each in wrong if number_of(each) is not None] == []


def test_every_two_signs_mistyped_are_noticed() -> None:
    signs = written(2**33 + 12345, least=6).replace("-", "")
    for first in range(len(signs)):
        for second in range(first):
            for one in SIGNS.replace(signs[first], ""):
                for other in SIGNS.replace(signs[second], ""):
                    wrong = list(signs)
                    wrong[first], wrong[second] = one, other
                    assert number_of("".join(wrong)) is None


@given(st.integers(0, 2**140), st.data())
def test_signs_swapped_dropped_or_added_are_noticed(number: int, data: st.DataObject) -> None:
    signs = written(number, least=6).replace("-", "")
    at = data.draw(st.integers(0, len(signs) - 2))
    one, other = signs[at], signs[at + 1]
    if one != other:
        assert number_of(signs[:at] + other + one + signs[at + 2 :]) is None
    assert number_of(f"0{signs}") != number
    assert number_of(signs[1:]) != number


@pytest.mark.parametrize("typed", ["", "-", "0", "00", "U", "no key at all", "é" * 9, "0" * 5000])
def test_what_is_no_key_is_called_mistyped(typed: str) -> None:
    with pytest.raises(MistypedError, match="mistyped"):
        moves_of(SMALL, typed, SMALL.library.pathways)


def test_a_pathway_that_is_not_here() -> None:
    key = key_of(SMALL, "leaking-wound", made(SMALL, "leaking-wound", WALK))
    with pytest.raises(NoSuchPathwayError, match="--library"):
        moves_of(SHIPPED, key, SHIPPED.library.pathways)
    with pytest.raises(NoSuchPathwayError):
        moves_of(SMALL, key, ["restless-patient"])


def test_a_pathway_that_has_changed_since(tmp_path: Path) -> None:
    key = key_of(SMALL, "leaking-wound", made(SMALL, "leaking-wound", WALK))
    source = TOP / "tests" / "tui" / "library"
    edited = tmp_path / "leaking-wound.yaml"
    text = (source / "leaking-wound.yaml").read_text()
    edited.write_text(text.replace("at most: 2", "at most: 3"))
    changed = load_library(source, [edited])
    with pytest.raises(ChangedSinceError, match="`leaking-wound`, or a word it uses, has changed"):
        moves_of(changed, key, changed.library.pathways)


@pytest.mark.parametrize("body", [2 * 60, 2 * 1 + 128 * 99, 2 * (COUNTED_BY - 1) + 1 + 128**3])
def test_moves_that_do_not_fit(body: int) -> None:
    head = number_of(key_of(SMALL, "leaking-wound", ())) or 0
    with pytest.raises(NoLongerLegalError, match="do not fit `leaking-wound`"):
        moves_of(SMALL, written(head % (NAME * CONTENT) + body * NAME * CONTENT), ["leaking-wound"])


def test_no_key_walks_for_ever() -> None:
    ring = as_loaded(library(pathway("p", do("a", "a"))))
    longest = (Done(),) * MOST_MOVES
    assert moves_of(ring, key_of(ring, "p", longest), ["p"]) == ("p", longest)
    with pytest.raises(NoLongerLegalError):
        moves_of(ring, key_of(ring, "p", (*longest, Done())), ["p"])
