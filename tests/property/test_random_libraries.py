"""The random libraries are worth trying things on: what is difficult comes up often in them."""

from __future__ import annotations

from collections import Counter

from chamberwise.engine.meaning.advance import BoundReached, CameBack, Decided, PassedOver
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.state import Freshness, State
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Outcome, Question
from hypothesis import HealthCheck, Phase, given, settings

from tests.support.strategies import libraries, picks
from tests.support.walking import passages, random_walk

TRIED = 200
OFTEN = {
    "outcome": 80,
    "several moves": 40,
    "partly known": 20,
    "asked again once stale": 10,
    "passed over": 10,
    "row taken": 15,
    "not known": 10,
    "otherwise": 4,
    "bound reached": 15,
    "came back": 8,
    "handed over": 12,
}


def test_what_is_difficult_comes_up_often() -> None:
    seen: Counter[str] = Counter()

    @settings(
        max_examples=TRIED,
        derandomize=True,
        deadline=None,
        phases=[Phase.generate],
        suppress_health_check=list(HealthCheck),
    )
    @given(libraries(), picks)
    def look(library: Library, chosen: list[int]) -> None:
        seen.update(_features(library, chosen))

    look()
    assert {what: seen[what] for what, least in OFTEN.items() if seen[what] < least} == {}


def _features(library: Library, chosen: list[int]) -> set[str]:
    features: set[str] = set()
    walked = list(passages(library, "p0", chosen))
    for made in walked:
        features |= {_silent_feature(each) for each in made.silent}
        features |= _state_features(library, made.state)
    if len(list(random_walk(library, "p0", chosen))) >= 4:
        features.add("several moves")
    return features


def _silent_feature(event: object) -> str:
    match event:
        case PassedOver():
            return "passed over"
        case BoundReached():
            return "bound reached"
        case CameBack():
            return "came back"
        case Decided(_, by):
            return "row taken" if isinstance(by, int) else by
    raise AssertionError(event)


def _state_features(library: Library, state: State) -> set[str]:
    features = set()
    step = library.step(state.place)
    if isinstance(step, Outcome):
        features.add("outcome")
    if state.place.pathway != "p0":
        features.add("handed over")
    for field in layout_of(library).fields(state.place.pathway):
        features.add(str(state.freshness(field)))
        if isinstance(step, Question) and step.ask == field.finding.id:
            asked = layout_of(library).field(state.place.pathway, step.ask)
            if state.freshness(asked) is Freshness.STALE:
                features.add("asked again once stale")
    return features
