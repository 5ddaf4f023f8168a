"""Every shipped book: fair, without a dead end, and with an answer to every wrong act."""

from __future__ import annotations

from collections import deque

import pytest
from chamberwise.engine.drill.doing import what_is_seen
from chamberwise.engine.drill.entries import Did, Looked
from chamberwise.engine.drill.fold import Drill, add, begin_drill
from chamberwise.engine.drill.following import can_be_done, is_at_the_end
from chamberwise.engine.drill.playing import begun, played, whats_next
from chamberwise.engine.drill.scenario import Scenario
from chamberwise.engine.drill.standing import Standing, has_been
from chamberwise.engine.drill.wording.clauses import Clause
from chamberwise.engine.drill.wording.phrasebook import phrasebook_of
from chamberwise.engine.drill.wording.triggers import says_trigger

from tests.engine.drill.stage import began, scenario, shipped
from tests.support.thorough import THOROUGH

BOOKS = shipped()[1].books
NAMED = [(name, each.id) for name, book in BOOKS.items() for each in book.scenarios]
DRAWN = [(name, None) for name in BOOKS]
SEEDS = range(200 if THOROUGH else 12)
DEPTH = 3 if THOROUGH else 2


def texts(of: Scenario) -> list[str]:
    """Return everything that is perceived in any scenario of a book before or after the cue."""
    book = of.book
    found = [*book.decoys, *(text for texts in book.brief.values() for text in texts)]
    found += [text for each in book.openings for text in (*each.cues, each.so_far)]
    found += [
        text
        for each in book.scenarios
        for text in (*each.cues, *each.brief, each.so_far, each.title)
    ]
    found += [each.shows for each in book.injects]
    found += [reply.shows for each in book.injects for reply in each.replies]
    found += [turn.shows for each in of.in_truth.values() for turn in each.turns]
    found += [each.otherwise for each in of.in_truth.values()]
    return [text for text in found if text]


def is_ended(of: Scenario, standing: Standing) -> bool:
    return has_been(of, standing, of.ends_at) or is_at_the_end(of, standing)


@pytest.mark.parametrize("pathway", BOOKS)
def test_no_cue_names_what_it_is(pathway: str) -> None:
    of = scenario(None, 0, pathway)
    book = phrasebook_of(of)
    assert [text for text in texts(of) if says_trigger(book, Clause(text))] == []


@pytest.mark.parametrize("pathway", BOOKS)
def test_every_wrong_act_has_a_consequence(pathway: str) -> None:
    for seed in SEEDS:
        of = scenario(None, seed, pathway)
        for act in of.harms:
            drill = add(begin_drill(of, began(of)), Did(1, act, "surgeon"))
            assert [each.act for each in drill.standing.consequences] == [act], (seed, act)
            assert drill.standing.cues, (seed, act)
            assert whats_next(of, drill.standing), (seed, act)


@pytest.mark.parametrize(("pathway", "name"), [*NAMED, *DRAWN])
def test_what_the_pathway_asks_for_comes_to_an_end_without_harm(
    pathway: str, name: str | None
) -> None:
    for seed in SEEDS:
        of = scenario(name, seed, pathway)
        last = first = begun(of)
        for last in played(of, first):
            assert last.consequences == (), (seed, last.consequences)
            if is_ended(of, last):
                break
        assert is_ended(of, last), (seed, last.state.place)


@pytest.mark.parametrize(("pathway", "name"), NAMED)
def test_no_dead_end_whatever_is_tried(pathway: str, name: str) -> None:
    """A player tries every act at every turn to a depth, and then plays on rightly to the end."""
    of = scenario(name, 3, pathway)
    first = begin_drill(of, began(of))
    tried = deque([(first, 0)])
    seen: set[tuple[object, ...]] = set()
    while tried:
        drill, depth = tried.popleft()
        key = key_of(drill)
        if key in seen:
            continue
        seen.add(key)
        assert comes_to_an_end(drill), [getattr(e, "act", "") for e in drill.journal]
        if depth < DEPTH and not is_ended(of, drill.standing):
            tried.extend((each, depth + 1) for each in tries(drill))
    assert len(seen) > 20


def key_of(drill: Drill) -> tuple[object, ...]:
    standing = drill.standing
    return standing.state, tuple(standing.truth.items()), tuple(sorted(standing.kept.items()))


def tries(drill: Drill) -> list[Drill]:
    of = drill.scenario
    wrong = [*of.harms, "withdraw-tip", "insert-cutter", "cut-vitreous", "place-lens-in-sulcus"]
    acts = [*wrong, *(each.act for each in whats_next(of, drill.standing) if each.act)]
    found = [
        add(drill, Did(1, act, "surgeon"))
        for act in dict.fromkeys(acts)
        if can_be_done(of, drill.standing, act)
    ]
    for each in whats_next(of, drill.standing):
        if each.finding:
            saw = what_is_seen(of, drill.standing, each.finding)
            found.append(add(drill, Looked(1, each.finding, saw, "surgeon")))
    return found


def comes_to_an_end(drill: Drill) -> bool:
    standing = drill.standing
    if is_ended(drill.scenario, standing):
        return True
    return any(is_ended(drill.scenario, each) for each in played(drill.scenario, standing))
