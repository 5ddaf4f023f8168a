"""A drill is what its journal folds to: the same for the same journal, whatever is done in it."""

from __future__ import annotations

from chamberwise.engine.drill.entries import Did, Injected, Looked, Mode, Rewound
from chamberwise.engine.drill.fold import Drill, add, as_run, begin_drill, fold, unfold
from chamberwise.engine.drill.generate import DRAWN
from chamberwise.engine.drill.scenario import Scenario
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.engine.drill.stage import began, scenario, shipped, typed
from tests.support.thorough import THOROUGH

MANY = 300 if THOROUGH else 25
ACTS = sorted(scenario().library.words(scenario().pathway).acts)
FINDINGS = sorted(scenario().truth)
NAMES = [None, *(each.id for each in shipped()[1].books[scenario().pathway].scenarios)]
doings = st.lists(st.one_of(st.sampled_from(ACTS), st.sampled_from([f"?{f}" for f in FINDINGS])))


def done(of: Scenario, said: list[str]) -> Drill:
    drill = begin_drill(of, began(of, Mode.REHEARSE))
    for at, each in enumerate(said):
        if each.startswith("?"):
            entry: Did | Looked = Looked(at, each[1:], None, "surgeon")
        else:
            entry = Did(at, each, "surgeon")
        drill = add(drill, entry)
    return drill


@settings(max_examples=MANY, deadline=None)
@given(st.sampled_from(NAMES), st.integers(0, 50), doings)
def test_whatever_is_done_never_fails_and_folds_to_the_same(
    name: str | None, seed: int, said: list[str]
) -> None:
    drill = done(scenario(name, seed), said)
    assert unfold(drill.scenario, drill.journal).standing == drill.standing
    assert fold(drill.scenario, drill.journal) == as_run(drill)


@settings(max_examples=MANY, deadline=None)
@given(st.integers(0, 50), doings)
def test_the_truth_changes_only_as_declared(seed: int, said: list[str]) -> None:
    of = scenario(None, seed)
    drill = begin_drill(of, began(of))
    for at, each in enumerate(said):
        before = drill.standing.truth
        act = each.removeprefix("?")
        drill = add(
            drill, Looked(at, act, None, "surgeon") if act != each else Did(at, act, "surgeon")
        )
        after = drill.standing.truth
        changed = {(name, after[name]) for name in after if after[name] != before[name]}
        assert changed <= (declared(of, act) if act == each else set())


def declared(of: Scenario, act: str) -> set[tuple[str, str]]:
    """Return what an act may make true: its turns, what doing it tells, what it answers."""
    found = {pair for turn in of.turns_of(act).turns for pair in turn.becomes}
    known = of.library.words(of.pathway).acts.get(act)
    for finding, values in known.effects.known if known else ():
        found |= {(finding, value) for value in values}
    for inject in of.injects:
        found |= {pair for reply in inject.replies if reply.act == act for pair in reply.becomes}
    return found


@settings(max_examples=MANY, deadline=None)
@given(st.integers(0, 50), doings, st.data())
def test_going_back_leaves_the_drill_as_it_was(
    seed: int, said: list[str], data: st.DataObject
) -> None:
    of = scenario(None, seed)
    drill = done(of, said)
    to = data.draw(st.integers(1, max(1, len(said))))
    back = add(drill, Rewound(999, to))
    assert back.standing == done(of, said[: to - 1]).standing
    assert len(back.journal) == len(drill.journal) + 1


def test_an_inject_changes_the_truth_and_is_answered() -> None:
    of = scenario("sheet-that-stays")
    drill = add(typed(of, []), Injected(50_000, "patient-in-pain"))
    assert drill.standing.truth["comfort"] == "uncomfortable"
    drill = add(drill, Did(55_000, "top-up-block", "surgeon"))
    assert drill.standing.truth["comfort"] == "comfortable"
    assert drill.standing.replied == (("patient-in-pain", "top-up-block", 55_000),)


def test_what_the_clouded_cornea_hides_cannot_be_told() -> None:
    of = scenario("fifth-of-six")
    drill = add(typed(of, []), Injected(1, "cornea-clouds"))
    seen = typed(of, ["where is the vitreous"]).standing
    assert drill.standing.truth["cornea"] == "too-cloudy"
    assert seen.truth["cornea"] == "clear-enough"
    assert DRAWN not in NAMES
