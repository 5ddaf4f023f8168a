"""Whatever a library says, a comparison tells when it says something else: leaf by leaf."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass, replace
from datetime import date, timedelta
from enum import Enum
from typing import Any

import pytest
from chamberwise.engine.comparing.changes import changes_of_pathway
from chamberwise.engine.comparing.words import changes_of_words
from chamberwise.engine.model.pathway import Seal
from chamberwise.engine.model.step import Action, Branch, Handover, Outcome, Question

from tests.engine.comparing.shipped import shipped
from tests.support.thorough import cases

BY_THEMSELVES = ("id", "seal")
"""A name belongs to the place that holds it; the digest of an approval says nothing of its own."""

PAIRS = ("on_return", "plan", "assume", "asked_again", "known", "terms")


def otherwise(value: Any) -> Iterator[Any]:
    """Yield values that differ in one leaf, or in what a list holds and in what order."""
    if isinstance(value, tuple):
        yield from _lists(value)
    elif isinstance(value, Mapping):
        for key in value:
            yield {name: each for name, each in value.items() if name != key}
            for each in otherwise(value[key]):
                yield {**value, key: each}
    elif is_dataclass(value) and not isinstance(value, Seal):
        yield from _records(value)
    else:
        yield from _leaves(value)


def _leaves(value: Any) -> Iterator[Any]:
    match value:
        case bool():
            yield not value
        case Enum():
            yield next(each for each in type(value) if each is not value)
        case str():
            yield f"{value} crooked" if value else "crooked"
        case int():
            yield value + 1
        case date():
            yield value - timedelta(days=1)


def _records(value: Any) -> Iterator[Any]:
    for field in fields(value):
        if field.name not in BY_THEMSELVES:
            inside = getattr(value, field.name)
            has_pairs = field.name in PAIRS and all(isinstance(each, tuple) for each in inside)
            for each in _pairs(inside) if has_pairs else otherwise(inside):
                yield replace(value, **{field.name: each})


def _lists(value: tuple[Any, ...]) -> Iterator[tuple[Any, ...]]:
    for place, item in enumerate(value):
        yield value[:place] + value[place + 1 :]
        for each in otherwise(item):
            yield (*value[:place], each, *value[place + 1 :])
    if len(value) > 1 and value != value[::-1]:
        yield value[::-1]


def _pairs(value: tuple[tuple[str, Any], ...]) -> Iterator[tuple[Any, ...]]:
    """Yield names with other values; the order in which names or possible values stand is none."""
    for place, (name, each) in enumerate(value):
        yield value[:place] + value[place + 1 :]
        others = [each[:-1], (*each, "crooked")] if isinstance(each, tuple) else otherwise(each)
        for other in others:
            yield (*value[:place], (name, other), *value[place + 1 :])


def steps() -> list[tuple[str, str]]:
    """Return one step of each kind, those that say most: two pathways have all between them."""
    found = {}
    for name, pathway in shipped().library.pathways.items():
        for step in pathway.steps.values():
            kind = type(step)
            if kind not in found or len(repr(step)) > len(repr(found[kind][1])):
                found[kind] = (name, step)
    assert set(found) == {Question, Action, Branch, Handover, Outcome}
    return [(name, step.id) for name, step in found.values()]


def every_step() -> list[tuple[str, str]]:
    return [(n, s) for n, each in shipped().library.pathways.items() for s in each.steps]


@pytest.mark.parametrize(("name", "step"), cases(steps(), every_step()))
def test_no_leaf_of_a_step_changes_in_silence(name: str, step: str) -> None:
    pathway = shipped().library.pathways[name]
    small = replace(pathway, steps={step: pathway.steps[step]}, words=pathway.words)
    for each in otherwise(pathway.steps[step]):
        assert list(changes_of_pathway(small, replace(small, steps={step: each}), {})), each


@pytest.mark.parametrize("name", cases(["closing-and-after-care"], shipped().library.pathways))
def test_no_leaf_of_a_head_changes_in_silence(name: str) -> None:
    pathway = replace(shipped().library.pathways[name], steps={})
    for field in fields(pathway):
        if field.name not in (*BY_THEMSELVES, "words", "steps"):
            for each in otherwise(getattr(pathway, field.name)):
                changed = replace(pathway, **{field.name: each})
                assert list(changes_of_pathway(pathway, changed, {})), (field.name, each)


@pytest.mark.parametrize("table", ["findings", "acts", "duties", "kit", "sources", "rules"])
def test_no_leaf_of_a_word_changes_in_silence(table: str) -> None:
    words = shipped().library.shared
    every = getattr(words, table)
    for name in cases(list(every)[:6], every):
        one = replace(words, **{table: {name: every[name]}})
        for each in otherwise(every[name]):
            assert list(changes_of_words(one, replace(words, **{table: {name: each}}), None)), each
