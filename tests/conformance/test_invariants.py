"""The 54 requirements: watched on thousands of walks, read off the form, or taught, with why."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache

import networkx as nx
import pytest
from chamberwise.engine.graph.targets import targets
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Step

from tests.conformance import (
    rules_after_care,
    rules_closing,
    rules_lens,
    rules_nucleus,
    rules_vitreous,
)
from tests.conformance.acts import MANOEUVRES
from tests.conformance.driver import (
    DROPPED,
    FOLDER,
    PATHWAYS,
    RUPTURE,
    VITRECTOMY,
    Walk,
    library,
)
from tests.conformance.monitors import Rule
from tests.conformance.rules_in_form import RULES as IN_FORM
from tests.conformance.rules_in_form import FormRule
from tests.conformance.rules_taught import TAUGHT, Taught
from tests.conformance.sampling import STAGES, case_walks, random_walk
from tests.conformance.situations import SITUATIONS
from tests.conformance.trace import KnownByHand, Trace, did

WATCHED: tuple[Rule, ...] = (
    *rules_nucleus.RULES,
    *rules_vitreous.RULES,
    *rules_lens.RULES,
    *rules_closing.RULES,
    *rules_after_care.RULES,
)
WALKS = 500
CHUNKS = 4


def broken_rules(walked: Walk) -> Iterator[str]:
    trace = walked.trace
    for rule in WATCHED:
        if wrong := rule.monitor(trace):
            yield f"{rule.number}: {wrong}"


@pytest.mark.parametrize("chunk", range(CHUNKS))
@pytest.mark.parametrize("entry", PATHWAYS)
def test_random_walks_keep_every_rule(entry: str, chunk: int) -> None:
    for seed in range(chunk * WALKS, (chunk + 1) * WALKS):
        assert list(broken_rules(random_walk(entry, seed))) == [], f"seed {seed}"


@pytest.mark.parametrize("stage", STAGES)
@pytest.mark.parametrize("entry", [RUPTURE, DROPPED])
def test_every_case_at_every_stage_keeps_every_rule(entry: str, stage: str) -> None:
    for combination, walked in case_walks(entry, stage):
        assert list(broken_rules(walked)) == [], combination


def test_every_situation_keeps_every_rule() -> None:
    for situation in SITUATIONS:
        assert list(broken_rules(situation.walk())) == [], situation.says


@pytest.mark.parametrize("rule", WATCHED, ids=lambda each: str(each.number))
def test_a_doctored_trace_breaks_the_rule(rule: Rule) -> None:
    assert rule.monitor(rule.broken) != ""


@pytest.mark.parametrize("rule", WATCHED, ids=lambda each: str(each.number))
def test_a_real_walk_maimed_breaks_the_rule(rule: Rule) -> None:
    """No rule holds for want of anything to watch."""
    assert any(rule.monitor(maimed) for trace in real_traces() for maimed in maimings(trace))


@lru_cache(maxsize=1)
def real_traces() -> tuple[Trace, ...]:
    return tuple(situation.walk().trace for situation in SITUATIONS)


def maimings(trace: Trace) -> Iterator[Trace]:
    """Yield a trace maimed: acts done twice, nothing known, each act left out or done too early."""
    yield replace(trace, events=tuple(each for event in trace.events for each in (event, event)))
    blind = (replace(event, known=KnownByHand()) for event in trace.events)
    yield replace(trace, events=tuple(blind))
    for name in sorted({event.name for event in trace.events if event.kind in {"did", "owed"}}):
        yield replace(trace, events=tuple(each for each in trace.events if each.name != name))
    for name in MANOEUVRES:
        yield replace(trace, events=(did(name), *trace.events))


@pytest.mark.parametrize("rule", IN_FORM, ids=lambda each: str(each.number))
def test_the_form_keeps_the_rule_and_can_break_it(rule: FormRule) -> None:
    assert rule.faults(library()) == []
    assert rule.faults(rule.broken(library())) != []


@pytest.mark.parametrize("rule", TAUGHT, ids=lambda each: str(each.number))
def test_what_no_finding_carries_is_taught(rule: Taught) -> None:
    for pathway in library().pathways.values():
        for step in pathway.steps.values():
            if acts_of(step) & set(rule.at):
                assert teaches(pathway, step, rule.words), f"{pathway.id} {step.id}"


def test_a_rule_that_is_taught_nowhere_is_found_out() -> None:
    vitrectomy = library().pathways[VITRECTOMY]
    assert not teaches(vitrectomy, vitrectomy.steps["cut-the-gel"], ("never written",))


def acts_of(step: Step) -> set[str]:
    return {line.act for line in step.lines if line.act} if isinstance(step, Action) else set()


def teaches(pathway: Pathway, step: Step, words: tuple[str, ...]) -> bool:
    """Whether a step, or one that leads to it, says any of the words."""
    graph = nx.DiGraph()
    for each in pathway.steps.values():
        graph.add_edges_from((each.id, target.step) for target in targets(each))
    ways_in = (pathway.steps[name] for name in {step.id, *nx.ancestors(graph, step.id)})
    return any(word in said for each in ways_in for said in said_at(each) for word in words)


def said_at(step: Step) -> Iterator[str]:
    """Yield the cautions and instructions of a step."""
    for caution in step.cautions:
        yield from (caution.harm, caution.instead)
    if isinstance(step, Action):
        yield from (line.text for line in step.lines)


def test_each_of_the_54_is_watched_read_off_or_taught() -> None:
    watched, formed = {rule.number for rule in WATCHED}, {rule.number for rule in IN_FORM}
    taught = {rule.number for rule in TAUGHT}
    assert watched | formed | taught == set(range(1, 55))
    assert not taught & (watched | formed)
    assert len(WATCHED) == len(watched)


def test_the_notes_call_the_same_rules_taught() -> None:
    notes = (FOLDER / "notes" / "posterior-capsule-rupture.md").read_text(encoding="utf-8")
    rows = re.findall(r"^\| (\d+) \| [^|]+ \| (Held|Taught)\b", notes, flags=re.MULTILINE)
    assert [int(number) for number, _ in rows] == list(range(1, 55))
    taught = {int(number) for number, how in rows if how == "Taught"}
    assert taught == {rule.number for rule in TAUGHT}


@pytest.mark.parametrize("rule", [*WATCHED, *IN_FORM, *TAUGHT], ids=lambda each: each.says)
def test_the_rule_names_its_source(rule: Rule | FormRule | Taught) -> None:
    marks = ("common practice", "derived", "memory")
    assert re.search(r"\bS\d+\b", rule.sources) or rule.sources.startswith(marks)
