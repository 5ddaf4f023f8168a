"""The checks that follow arrows, against definitions of their own on random graphs."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import product

import numpy
from chamberwise.engine.checks.safety import caution_too_late, late_call_for_help
from chamberwise.engine.checks.shape import (
    handover_ring,
    loop_without_bound,
    loop_without_exit,
    no_way_out,
    unreachable_step,
)
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import (
    Action,
    Branch,
    Handover,
    Outcome,
    Question,
    Step,
)
from hypothesis import given
from hypothesis import strategies as st
from scipy.sparse import csr_array  # type: ignore[import-untyped]
from scipy.sparse.csgraph import (  # type: ignore[import-untyped]
    breadth_first_order,
    connected_components,
)

from tests.support import build
from tests.support.strategies import libraries, picks
from tests.support.subjects import places, subject

wild = libraries(tame=False)
any_library = libraries() | wild


def arrows(step: Step) -> list[str]:
    """Return where a step leads, the exit of its bound among them."""
    match step:
        case Question():
            there = [answer.go_to for answer in step.answers]
        case Action():
            there = [step.go_to]
        case Branch():
            rest = (step.otherwise, step.not_known)
            there = [*(row.go_to for row in step.rows), *(each for each in rest if each)]
        case Handover():
            there = [back for _, back in step.on_return]
        case _:
            there = []
    return there + ([step.bound.after_that] if step.bound else [])


def matrix(names: list[str], edges: Iterator[tuple[str, str]]) -> csr_array:
    square = numpy.zeros((len(names), len(names)), dtype=int)
    for here, there in edges:
        if here in names and there in names:
            square[names.index(here), names.index(there)] = 1
    return csr_array(square)


def all_arrows(pathway: Pathway) -> Iterator[tuple[str, str]]:
    for step in pathway.steps.values():
        for there in arrows(step):
            yield step.id, there


def reached(pathway: Pathway, start: str, without: set[str] | None = None) -> set[str]:
    """Return the steps that arrows lead to, by scipy, with some steps taken out."""
    names = [name for name in pathway.steps if name not in (without or set())]
    if start not in names:
        return set()
    graph = matrix(names, all_arrows(pathway))
    order = breadth_first_order(graph, names.index(start), return_predecessors=False)
    return {names[place] for place in order}


def on_a_loop(names: list[str], edges: list[tuple[str, str]]) -> list[set[str]]:
    """Return the strongly connected sets of steps that hold a loop, by scipy."""
    _, labels = connected_components(matrix(names, iter(edges)), connection="strong")
    groups = [
        {name for name, label in zip(names, labels, strict=True) if label == each}
        for each in sorted(set(labels))
    ]
    return [
        group for group in groups if len(group) > 1 or {(name, name) for name in group} & {*edges}
    ]


@given(any_library)
def test_unreachable_step(library: Library) -> None:
    for name, pathway in library.pathways.items():
        expected = set(pathway.steps) - reached(pathway, pathway.start)
        told = places(unreachable_step.check, subject(library, name))
        follow = {each: reached(pathway, each) - {each} for each in told}
        assert told | set().union(*follow.values()) & expected == expected
        assert all(told.isdisjoint(each) for each in follow.values())


@given(any_library)
def test_no_way_out(library: Library) -> None:
    for name, pathway in library.pathways.items():
        ends = {each.id for each in pathway.steps.values() if may_end(library, each)}
        stuck = {each for each in pathway.steps if not reached(pathway, each) & ends}
        told = places(no_way_out.check, subject(library, name))
        assert told <= stuck
        assert all(reached(pathway, each) & told for each in stuck)
        assert all(reached(pathway, each) & told == {each} for each in told)  # each loop once


def may_end(library: Library, step: Step) -> bool:
    """Whether a walk may end at a step, or for good in the pathway it hands over to."""
    if not isinstance(step, Handover):
        return isinstance(step, Outcome)
    there = library.pathways[step.to].steps.values()
    left = {each.id for each in there if isinstance(each, Outcome)} - dict(step.on_return).keys()
    return bool(left) or any(
        isinstance(each, Handover) and may_end(library, each) for each in there
    )


@given(any_library)
def test_loop_without_bound(library: Library) -> None:
    for name, pathway in library.pathways.items():
        free = [each for each, step in pathway.steps.items() if not step.bound]
        groups = on_a_loop(free, [pair for pair in all_arrows(pathway) if {*pair} <= {*free}])
        expected = {min(group, key=list(pathway.steps).index) for group in groups}
        assert places(loop_without_bound.check, subject(library, name)) == expected


@given(any_library)
def test_loop_without_exit(library: Library) -> None:
    for name, pathway in library.pathways.items():
        used_up = [
            (step.id, there)
            for step in pathway.steps.values()
            for there in ([step.bound.after_that] if step.bound else arrows(step))
        ]
        groups = on_a_loop(list(pathway.steps), used_up)
        expected = {each for group in groups for each in group if pathway.steps[each].bound}
        assert places(loop_without_exit.check, subject(library, name)) == expected


@given(any_library)
def test_with_neither_fault_arrows_alone_cannot_be_followed_for_ever(library: Library) -> None:
    """Follow every arrow, counting how often each bounded step was entered and knowing nothing."""
    for name, pathway in library.pathways.items():
        about = subject(library, name)
        faults = places(loop_without_bound.check, about) | places(loop_without_exit.check, about)
        if not faults and len(pathway.steps) < 8:
            for start in pathway.steps:
                assert not goes_on_for_ever(pathway, (start, ()), set(), set())


Counted = tuple[str, tuple[tuple[str, int], ...]]


def goes_on_for_ever(
    pathway: Pathway, here: Counted, open_now: set[Counted], done: set[Counted]
) -> bool:
    if here in open_now:
        return True
    if here in done:
        return False
    open_now.add(here)
    rounds = any(
        goes_on_for_ever(pathway, entered(pathway, there, dict(here[1])), open_now, done)
        for there in arrows(pathway.steps[here[0]])
    )
    open_now.discard(here)
    done.add(here)
    return rounds


def entered(pathway: Pathway, target: str, counts: dict[str, int]) -> Counted:
    """Return the step that an arrow comes to once bounds are kept, and the counts there."""
    for _ in pathway.steps:
        bound = pathway.steps[target].bound
        if bound is None:
            break
        if counts.get(target, 0) < bound.at_most:
            counts = {**counts, target: counts.get(target, 0) + 1}
            break
        target = bound.after_that
    return target, tuple(sorted(counts.items()))


@given(st.lists(st.tuples(st.integers(0, 4), st.integers(0, 4)), max_size=7))
def test_handover_ring(pairs: list[tuple[int, int]]) -> None:
    names = [f"p{number}" for number in range(5)]
    edges = [(names[here], names[there]) for here, there in dict.fromkeys(pairs)]
    steps = {
        name: [build.hand_over(f"to-{there}", there) for here, there in edges if here == name]
        for name in names
    }
    library = build.library(
        *(build.pathway(name, *steps[name], build.end("over")) for name in names)
    )
    rings = on_a_loop(names, edges)
    for name in names:
        expected = {
            f"to-{there}"
            for here, there in edges
            if here == name and any({name, there} <= ring for ring in rings)
        }
        assert places(handover_ring.check, subject(library, name, explored=False)) == expected


def calls(library: Library, step: Step) -> bool:
    acts = library.shared.acts
    return isinstance(step, Action) and any(
        acts[line.act or ""].calls_for_help for line in step.lines
    )


@given(any_library)
def test_late_call_for_help(library: Library) -> None:
    for name, pathway in library.pathways.items():
        first = pathway.steps[pathway.start]
        expected = {
            third.id
            for second, third in product(pathway.steps.values(), repeat=2)
            if second.id in arrows(first)
            and third.id in arrows(second)
            and len({first.id, second.id, third.id}) == 3
            and not any(calls(library, step) for step in (first, second, third))
        }
        assert places(late_call_for_help.check, subject(library, name)) == expected


@given(any_library, picks)
def test_caution_too_late(library: Library, chosen: list[int]) -> None:
    pathway = with_cautions(library.pathways["p0"], chosen)
    library = build.library(
        pathway, findings=library.shared.findings.values(), acts=library.shared.acts.values()
    )
    expected = set()
    for act in library.shared.acts:
        warned = {
            step.id
            for step in pathway.steps.values()
            if act in {each.guards for each in step.cautions}
        }
        does = {step.id for step in pathway.steps.values() if act in acts_of(step)}
        if warned:
            unwarned = {way[-1] for way in simple_ways(pathway, (pathway.start,), warned)}
            expected |= {(act, each) for each in does & unwarned}
            expected |= set() if does else {(act, "")}
    assert set(told(library)) == expected


def with_cautions(pathway: Pathway, chosen: list[int]) -> Pathway:
    acts = {0: "cut", 1: "fill"}
    steps = [
        build.cautioned(step, acts[pick % 6]) if pick % 6 in acts else step
        for step, pick in zip(pathway.steps.values(), chosen * 2, strict=False)
        if not isinstance(step, Handover)
    ]
    steps = steps or [build.end("over")]
    return build.pathway("p0", *steps, findings=pathway.words.findings.values())


def acts_of(step: Step) -> set[str | None]:
    return {line.act for line in step.lines} if isinstance(step, Action) else set()


def simple_ways(
    pathway: Pathway, way: tuple[str, ...], without: set[str]
) -> Iterator[tuple[str, ...]]:
    """Yield every way from the entry that passes no step twice, and none of some steps."""
    if way[-1] in without:
        return
    yield way
    for there in dict.fromkeys(arrows(pathway.steps[way[-1]])):
        if there not in way and there in pathway.steps:
            yield from simple_ways(pathway, (*way, there), without)


def told(library: Library) -> Iterator[tuple[str, str]]:
    """Yield the act and each step of every caution reported, no step where none does the act."""
    for problem in caution_too_late.check(subject(library, "p0", explored=False)):
        act, *steps = re.findall("`([^`]*)`", problem.message)
        yield from ((act, step) for step in steps[:-1] or [""])
