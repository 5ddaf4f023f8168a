"""From read values to a book of drills, what acts do to the truth, and phrases."""

from __future__ import annotations

from typing import Any

from chamberwise.engine.model.drill import (
    CERTAIN,
    Authored,
    CriticalAct,
    DrillBook,
    Harm,
    Inject,
    InTruth,
    Opening,
    Order,
    Phrases,
    Reply,
    Seen,
    Settings,
    Task,
    TruthBook,
    Turn,
    Weights,
)
from chamberwise.engine.model.words import Act, FindingId
from chamberwise.engine.reading.build_values import Raw, condition, effects, names


def truth_book(raw: Raw) -> TruthBook:
    """Return what acts do to the truth."""
    wrong, other = raw.get("wrong acts", {}), raw.get("other acts", {})
    acts = {
        name: Act(name, said.get("title", name), effects(said), sources=names(said, "sources"))
        for name, said in {**wrong, **other}.items()
    }
    harms = {
        name: Harm(
            said.get("harm", ""),
            said.get("instead", ""),
            said.get("counts as"),
            names(said, "sources"),
        )
        for name, said in wrong.items()
    }
    in_truth = {name: _in_truth(said) for name, said in raw.get("in truth", {}).items()}
    seen_as = {
        (finding, value): tuple(_seen(each) for each in said if each)
        for finding, values in raw.get("seen as", {}).items()
        for value, said in values.items()
    }
    return TruthBook(acts, harms, in_truth, seen_as)


def _seen(raw: Raw) -> Seen:
    return Seen(raw.get("shows", ""), condition(raw.get("while")), names(raw, "unless done"))


def _in_truth(raw: Raw) -> InTruth:
    turns = tuple(_turn(each) for each in raw.get("turns", ()) if each)
    return InTruth(turns, condition(raw.get("only while")), raw.get("otherwise", ""))


def _turn(raw: Raw) -> Turn:
    return Turn(
        _settings(raw, "becomes"),
        condition(raw.get("when")),
        condition(raw.get("unless")),
        names(raw, "unless done"),
        names(raw, "once done"),
        names(raw, "since"),
        raw.get("percent", CERTAIN),
        raw.get("shows", ""),
        raw.get("lesson", ""),
        names(raw, "sources"),
    )


def phrases(raw: Raw) -> Phrases:
    """Return how people say things."""
    acts = {name: _texts(raw["acts"], name) for name in raw.get("acts", {})}
    looks = {name: _texts(raw["looks"], name) for name in raw.get("looks", {})}
    return Phrases(acts, looks, dict(raw.get("words", {})), _texts(raw, "like"))


def drill_book(raw: Raw) -> DrillBook:
    """Return the book of drills of a pathway."""
    unseen = tuple(
        (condition(each.get("while")), names(each, "findings"))
        for each in raw.get("unseen", ())
        if each
    )
    return DrillBook(
        raw.get("drill of", ""),
        _texts(raw, "triggers"),
        raw.get("announce", ""),
        raw.get("is", ""),
        _texts(raw, "could be"),
        raw.get("lasts", 0),
        names(raw, "ends at"),
        {name: _texts(raw["brief"], name) for name in raw.get("brief", {})},
        _weights(raw, "truth"),
        names(raw, "at a glance"),
        unseen,
        tuple(_opening(name, said) for name, said in raw.get("openings", {}).items()),
        _texts(raw, "decoys"),
        tuple(_inject(name, said) for name, said in raw.get("injects", {}).items()),
        tuple(_due(said) for said in raw.get("critical", ()) if said),
        tuple(_before(said) for said in raw.get("orders", ()) if said),
        tuple(_task(name, said) for name, said in raw.get("tasks", {}).items()),
        _texts(raw, "reader"),
        tuple(_scenario(name, said) for name, said in raw.get("scenarios", {}).items()),
    )


def _opening(name: str, raw: Raw) -> Opening:
    return Opening(
        name,
        raw.get("weight", 1),
        raw.get("so far", ""),
        _texts(raw, "cues"),
        _settings(raw, "known"),
        _weights(raw, "truth"),
        names(raw, "sources"),
        tuple(raw.get("calls", {}).items()),
    )


def _inject(name: str, raw: Raw) -> Inject:
    replies = tuple(
        Reply(
            act,
            said.get("title", ""),
            _settings(said, "becomes"),
            said.get("shows", ""),
            _texts(said, "said as"),
        )
        for act, said in raw.get("replies", {}).items()
    )
    return Inject(
        name,
        raw.get("title", ""),
        raw.get("shows", ""),
        raw.get("at"),
        raw.get("after"),
        condition(raw.get("when")),
        _settings(raw, "becomes"),
        replies,
    )


def _due(raw: Raw) -> CriticalAct:
    return CriticalAct(
        raw.get("act", ""),
        raw.get("soft"),
        raw.get("hard"),
        raw.get("once"),
        raw.get("why", ""),
        names(raw, "sources"),
    )


def _before(raw: Raw) -> Order:
    return Order(raw.get("first", ""), raw.get("then", ""), not raw.get("harmless", False))


def _task(name: str, raw: Raw) -> Task:
    return Task(
        name,
        raw.get("within", 0),
        raw.get("who", ""),
        raw.get("does", ""),
        names(raw, "or"),
        raw.get("act"),
        raw.get("request", False),
    )


def _scenario(name: str, raw: Raw) -> Authored:
    return Authored(
        name,
        raw.get("title", name),
        raw.get("opening", ""),
        _texts(raw, "brief"),
        raw.get("so far", ""),
        _settings(raw, "truth"),
        _texts(raw, "cues"),
        _texts(raw, "decoys") if "decoys" in raw else None,
        names(raw, "injects") if "injects" in raw else None,
        raw.get("begins at"),
        names(raw, "ends at"),
        raw.get("lasts"),
    )


def _texts(raw: Raw, key: str) -> tuple[str, ...]:
    return tuple(text for text in raw.get(key, ()) if isinstance(text, str))


def _settings(raw: Raw, key: str) -> Settings:
    said: dict[str, Any] = raw.get(key, {})
    return tuple((name, value) for name, value in said.items() if isinstance(value, str))


def _weights(raw: Raw, key: str) -> tuple[tuple[FindingId, Weights], ...]:
    said: dict[str, dict[str, int]] = raw.get(key, {})
    return tuple((finding, tuple(values.items())) for finding, values in said.items())
