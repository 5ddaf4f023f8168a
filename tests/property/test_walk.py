"""A walk is its journal: nothing is lost by taking back, writing down, or reading again."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta, timezone

import pytest
from chamberwise.engine.meaning.advance import advance, begin, moves
from chamberwise.engine.meaning.state import Done, State
from chamberwise.engine.model.library import Library
from chamberwise.engine.walk.codec import decode, encode
from chamberwise.engine.walk.entries import Began, Entry, Moved, Noted, Redone, Resumed, Undone
from chamberwise.engine.walk.walk import (
    JournalError,
    Walk,
    fold,
    make,
    note,
    redo,
    resumed,
    set_out,
    undo,
)
from hypothesis import given
from hypothesis import strategies as st

from tests.support.build import end, library, pathway
from tests.support.strategies import libraries, picks

NOW = datetime(2026, 11, 25, 9, 0, tzinfo=UTC)
DIGEST = "d" * 64

any_library = libraries() | libraries(tame=False)
offsets = st.integers(-14 * 60, 14 * 60).map(lambda each: timezone(timedelta(minutes=each)))
times = st.datetimes(timezones=st.none() | offsets)
what_happens = st.lists(
    st.sampled_from(["move", "move", "move", "undo", "redo", "note", "resume"]), max_size=40
)


def walks(library: Library, happenings: list[str], chosen: list[int]) -> Iterator[Walk]:
    """Yield a walk as it stands after each of the things that happen to it."""
    walk = set_out(library, "p0", DIGEST, NOW)
    yield walk
    for number, what in enumerate(happenings):
        walk = _after(walk, what, chosen[number % len(chosen)], NOW + timedelta(seconds=number))
        yield walk


def _after(walk: Walk, what: str, pick: int, now: datetime) -> Walk:
    match what:
        case "move":
            offered = moves(walk.library, walk.state)
            return make(walk, offered[pick % len(offered)], now) if offered else walk
        case "undo":
            return undo(walk, now)
        case "redo":
            return redo(walk, now)
        case "note":
            return note(walk, f"note {pick}", now)
    return resumed(walk, now)


@given(any_library, what_happens, picks)
def test_undo_then_redo_changes_nothing(
    library: Library, happenings: list[str], chosen: list[int]
) -> None:
    for walk in walks(library, happenings, chosen):
        back = undo(walk, NOW)
        if walk.legs:
            assert back.state == walk.legs[-1].before
            again = redo(back, NOW)
            assert (again.legs, again.taken_back) == (walk.legs, walk.taken_back)
            assert again.state == walk.state
            assert again.since == walk.since
        else:
            assert back is walk
        if walk.taken_back:
            forth = undo(redo(walk, NOW), NOW)
            assert (forth.legs, forth.taken_back) == (walk.legs, walk.taken_back)
        else:
            assert redo(walk, NOW) is walk


@given(any_library, what_happens, picks)
def test_folding_the_journal_gives_the_walk(
    library: Library, happenings: list[str], chosen: list[int]
) -> None:
    *_, walk = walks(library, happenings, chosen)
    assert fold(library, walk.journal) == walk
    assert fold(library, [decode(encode(entry)) for entry in walk.journal]) == walk


@given(any_library, what_happens, picks)
def test_a_journal_only_grows(library: Library, happenings: list[str], chosen: list[int]) -> None:
    before: tuple[Entry, ...] = ()
    for walk in walks(library, happenings, chosen):
        assert walk.journal[: len(before)] == before
        before = walk.journal


@given(any_library, what_happens, picks)
def test_where_a_walk_stands_is_what_its_standing_moves_make(
    library: Library, happenings: list[str], chosen: list[int]
) -> None:
    for walk in walks(library, happenings, chosen):
        assert walk.state == _made_again(walk)


def _made_again(walk: Walk) -> State:
    state = begin(walk.library, walk.began.pathway).state
    for leg in walk.legs:
        assert leg.before == state
        state = advance(walk.library, state, leg.move)
    return state


@given(any_library, what_happens, picks)
def test_a_move_drops_what_was_taken_back(
    library: Library, happenings: list[str], chosen: list[int]
) -> None:
    for walk in walks(library, happenings, chosen):
        offered = moves(library, walk.state)
        if offered:
            assert make(walk, offered[0], NOW).taken_back == ()


entries = st.one_of(
    st.builds(Began, times, st.text(), st.text(), st.text()),
    st.builds(Noted, times, st.text()),
    st.builds(Undone, times),
    st.builds(Redone, times),
    st.builds(Resumed, times),
    st.builds(Moved, times, st.from_type(Moved).map(lambda each: each.move)),
)


@given(entries)
def test_an_entry_is_one_line_and_reads_back(entry: Entry) -> None:
    line = encode(entry)
    assert "\n" not in line
    assert "\r" not in line
    assert decode(line) == entry


@given(any_library, what_happens, picks)
def test_a_journal_of_another_pathway_is_refused_or_folds_to_legal_moves(
    library: Library, happenings: list[str], chosen: list[int]
) -> None:
    *_, walk = walks(library, happenings, chosen)
    for other in library.pathways:
        first = Began(NOW, other, "0.1", DIGEST)
        try:
            folded = fold(library, (first, *walk.journal[1:]))
        except JournalError:
            continue
        assert folded.state == _made_again(folded)


def test_what_is_no_journal_is_refused() -> None:
    one = library(pathway("one", end("over")))
    with pytest.raises(JournalError, match="which pathway"):
        fold(one, ())
    with pytest.raises(JournalError, match="which pathway"):
        fold(one, (Noted(NOW, "a note first"),))
    with pytest.raises(JournalError, match="no pathway `two`"):
        fold(one, (Began(NOW, "two", "1", DIGEST),))
    with pytest.raises(JournalError, match="begins twice"):
        fold(one, (Began(NOW, "one", "1", DIGEST), Began(NOW, "one", "1", DIGEST)))
    with pytest.raises(JournalError, match="no longer fits"):
        fold(one, (Began(NOW, "one", "1", DIGEST), Moved(NOW, Done())))
