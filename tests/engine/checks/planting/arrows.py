"""Faults of the step graph: arrows, loops, bounds, branches, answers."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.graph.targets import Target, targets
from chamberwise.engine.model.library import Place as At
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Branch, Outcome, Question, Step
from chamberwise.engine.reading.tree import Scalar, Table

from tests.engine.checks.planting.editing import Fault, Source
from tests.engine.checks.planting.reached import NOT_KNOWN, possible, taken


def faults(source: Source) -> Iterator[Fault]:
    """Yield every fault of the graph; none in a vocabulary file."""
    pathway = source.pathway
    if pathway is None:
        return
    start = source.at("start")
    for wrong in (f"{pathway.start}x", "nowhere-at-all"):
        yield Fault("start", source.replaced((start, wrong)), "no-entry", start.span.line)
    for step in pathway.steps.values():
        yield from _of_arrows(source, step)
        yield from _unreachable(source, pathway, step)
        yield from _loops(source, pathway, step)
        if isinstance(step, Question):
            yield from _of_question(source, step)
        elif isinstance(step, Branch):
            yield from _of_branch(source, step)


def _node(source: Source, target: Target) -> Scalar:
    pointer: Pointer = target.pointer
    node = source.at(*pointer[:-1]) if pointer[-1] == "go to" else source.at(*pointer)
    if isinstance(node, Table):
        node = source.at(*pointer)
    assert isinstance(node, Scalar)
    return node


def _of_arrows(source: Source, step: Step) -> Iterator[Fault]:
    for target in targets(step):
        node = _node(source, target)
        line = node.span.line
        near = source.replaced((node, f"{target.step}x"))
        yield Fault("arrow misspelt", near, "leads-nowhere", line, f"`{target.step}`?")
        far = source.replaced((node, "nowhere-at-all"))
        yield Fault("arrow to nothing", far, "leads-nowhere", line, "`nowhere-at-all`")


def _unreachable(source: Source, pathway: Pathway, step: Step) -> Iterator[Fault]:
    ends = [each.id for each in pathway.steps.values() if isinstance(each, Outcome)]
    other = next((name for name in ends if name != step.id), None)
    if step.id == pathway.start or other is None:
        return
    changes = [
        (_node(source, target), other)
        for each in pathway.steps.values()
        for target in targets(each)
        if target.step == step.id
    ]
    line = source.key("steps", step.id).span.line
    yield Fault("no way in", source.replaced(*changes), "unreachable-step", line, f"`{step.id}`")


def _loops(source: Source, pathway: Pathway, step: Step) -> Iterator[Fault]:
    line = source.key("steps", step.id).span.line
    arrows = [target for target in targets(step) if target.label != "after that"]
    if not step.bound and arrows and isinstance(step, Question | Action | Branch):
        text = source.replaced(*((_node(source, target), step.id) for target in arrows))
        yield Fault("leads to itself", text, "loop-without-bound", line, f"`{step.id}`")
        yield Fault("trap", text, "no-way-out", line, f"`{step.id}`")
    if step.bound:
        yield from _of_bound(source, pathway, step)


def _of_bound(source: Source, pathway: Pathway, step: Step) -> Iterator[Fault]:
    at = ("steps", step.id)
    loop = _loop(pathway, step.id)
    exit_node = source.at(*at, "after that")
    for name in loop:
        text = source.replaced((exit_node, name))
        yield Fault("exit into the loop", text, "loop-without-exit", exit_node.span.line)
    if loop:
        text = source.spliced(source.cut(*at, "at most"), source.cut(*at, "after that"))
        first = min(loop, key=list(pathway.steps).index)
        line = source.key("steps", first).span.line
        lost = 2 if line > source.key(*at, "at most").span.line else 0
        yield Fault("no bound", text, "loop-without-bound", line - lost, f"`{step.id}`")


def _loop(pathway: Pathway, start: str) -> tuple[str, ...]:
    """Return a shortest round trip from a bounded step, over steps that have no bound."""
    ways: list[tuple[str, ...]] = [(start,)]
    met = {start}
    for way in ways:
        for target in targets(pathway.steps[way[-1]]):
            if target.step == start and target.label != "after that":
                return way
            if target.step not in met and not pathway.steps[target.step].bound:
                met.add(target.step)
                ways.append((*way, target.step))
    return ()


def _of_question(source: Source, step: Question) -> Iterator[Fault]:
    at = ("steps", step.id, "answers")
    line = source.key(*at).span.line
    still = possible(source.loaded.library, _here(source, step), step.ask)
    for answer in step.answers:
        text = source.without(*at, answer.id)
        if len(step.answers) > 2 and still.issuperset(answer.means):
            kind = "no cannot tell" if not answer.means else "answer removed"
            saying = f"`{answer.means[0] if answer.means else 'cannot tell'}`"
            yield Fault(kind, text, "answers-do-not-cover", line, saying)
        if answer.means:
            twice = source.with_entry(
                f"again: {{means: [{answer.means[0]}], go to: {answer.go_to}}}", *at, answer.id
            )
            lower = source.key(*at, answer.id).span.line + 1
            yield Fault("answered twice", twice, "answers-overlap", lower, f"`{answer.means[0]}`")


def _here(source: Source, step: Step) -> At:
    assert source.pathway
    return At(source.pathway.id, step.id)


def _of_branch(source: Source, step: Branch) -> Iterator[Fault]:
    at = ("steps", step.id, "branch")
    line = source.key(*at).span.line
    ways = taken(source.loaded.library, _here(source, step).pathway, step)
    for place in range(len(step.rows)):
        row = source.at(*at, place)
        twice = source.with_entry(source.raw(row), *at, place)
        length = source.raw(row).count("\n") + 1
        lower = source.key(*at, place, "when").span.line + length
        yield Fault("row twice", twice, "branch-decides-twice", lower)
        if not step.otherwise and len(step.rows) > 1 and place in ways:
            text = source.without(*at, place)
            yield Fault("row removed", text, "branch-cannot-decide", line)
    if step.not_known and NOT_KNOWN in ways:
        text = source.without("steps", step.id, "not known")
        yield Fault("no not known", text, "branch-cannot-decide", line)
