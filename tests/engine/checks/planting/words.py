"""Faults of names: words nobody defined, words nobody uses, findings used too early or in vain."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from chamberwise.engine.checks.references import Reference, of_words, references
from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Branch, Handover, Question
from chamberwise.engine.reading.tree import Listing, Scalar, Table

from tests.engine.checks.planting.editing import Fault, Source

NEW = {
    "findings": "planted: {title: Planted, about: eye, values: {a: {label: A}, b: {label: B}}}",
    "choices": "planted: {title: Planted, positions: {a: {label: A, says: A, sources: [SOURCE]}, "
    "b: {label: B, says: B, sources: [SOURCE]}}}",
    "acts": "planted: {title: Planted}",
    "duties": "planted: {title: Planted}",
    "kit": "planted: {title: Planted}",
    "sources": "planted: {cite: Planted, mark: memory}",
    "phases": "planted: Planted",
}


def faults(source: Source) -> Iterator[Fault]:
    """Yield every fault of names."""
    file = source.loaded.files[source.file]
    found = of_words(file.words) if file.words else references(file.pathway)  # type: ignore[arg-type]
    for reference in found:
        yield from _unknown(source, reference)
    for table, entry in NEW.items():
        if source.has(table):
            yield _unused(source, table, entry)
    if source.pathway:
        yield from _of_handovers(source, source.pathway)
        yield from _too_early(source, source.pathway)
        yield from _pointless(source, source.pathway)


def _place(source: Source, reference: Reference) -> Scalar:
    pointer = reference.pointer
    table = source.at(*pointer[:-1])
    if isinstance(table, Table):
        named_by_key = pointer[-1] == reference.name
        node = source.key(*pointer) if named_by_key else source.at(*pointer)
    elif isinstance(table, Listing):
        node = table.items[int(pointer[-1])]
    else:
        node = table
    assert isinstance(node, Scalar)
    return node


def _unknown(source: Source, reference: Reference) -> Iterator[Fault]:
    node = _place(source, reference)
    slug = "not-defined" if reference.value_of is None else "no-such-value"
    kind = f"unknown {reference.of}" if reference.value_of is None else "unknown value"
    line = node.span.line
    near = source.replaced((node, f"{reference.name}z"))
    yield Fault(kind, near, slug, line, f"{reference.name}z`")
    far = source.replaced((node, "quite-another-thing"))
    yield Fault(kind, far, slug, line, "`quite-another-thing`")


def _unused(source: Source, table: str, entry: str) -> Fault:
    first = next(iter(source.at(table).entries))  # type: ignore[union-attr]
    known = next(iter(source.loaded.library.shared.sources))
    text = source.with_entry(entry.replace("SOURCE", known), table, first)
    line = source.key(table, first).span.line
    return Fault(f"unused in {table}", text, "never-used", line, "`planted`")


def _of_handovers(source: Source, pathway: Pathway) -> Iterator[Fault]:
    for step in pathway.steps.values():
        if not isinstance(step, Handover):
            continue
        at: Pointer = ("steps", step.id)
        there = source.at(*at, "hand over to")
        for wrong in (f"{step.to}s", "nowhere-at-all"):
            text = source.replaced((there, wrong))
            line = there.span.line
            yield Fault("unknown pathway", text, "handover-to-nothing", line, f"`{wrong}`")
        for name, _ in step.on_return:
            key = source.key(*at, "on return", name)
            text = source.replaced((key, f"{name}s"))
            yield Fault("unknown outcome", text, "handover-to-nothing", key.span.line, f"`{name}s`")


def _too_early(source: Source, pathway: Pathway) -> Iterator[Fault]:
    """Put a branch on each finding before the first step, where nobody can know it."""
    if _is_handed_over_to(source.loaded.library, pathway.id):
        return
    first = next(iter(pathway.steps))
    start = source.at("start")
    for name, finding in source.loaded.library.words(pathway.id).findings.items():
        if finding.choice and finding.choice.chosen:
            continue
        phase, value, here = next(iter(pathway.phases)), finding.values[0].id, pathway.start
        step = (
            f"planted:\n    phase: {phase}\n    branch: [{{when: {{{name}: {value}}}, "
            f"go to: {here}}}]\n    otherwise: {here}\n    not known: {here}"
        )
        text = source.spliced(
            (source.start(start), source.end(start), "planted"),
            source.before(step, "steps", first),
        )
        line = source.key("steps", first).span.line + 2
        yield Fault("used before asked", text, "used-before-known", line, f"`{name}`")


def _is_handed_over_to(library: Library, name: str) -> bool:
    steps = (step for pathway in library.pathways.values() for step in pathway.steps.values())
    return any(isinstance(step, Handover) and step.to == name for step in steps)


def _pointless(source: Source, pathway: Pathway) -> Iterator[Fault]:
    """Lead all answers to one step, where nothing else looks at the finding."""
    looks = _looks(source.loaded.library)
    for step in pathway.steps.values():
        if not isinstance(step, Question) or looks[step.ask] > 1:
            continue
        at: Pointer = ("steps", step.id, "answers")
        changes = []
        for answer in step.answers:
            node = source.at(*at, answer.id)
            node = source.at(*at, answer.id, "go to") if isinstance(node, Table) else node
            changes.append((node, step.answers[0].go_to))
        line = source.at("steps", step.id, "ask").span.line
        text = source.replaced(*changes)
        yield Fault("pointless question", text, "asked-never-used", line, f"`{step.ask}`")


def _looks(library: Library) -> Counter[str]:
    looks: Counter[str] = Counter()
    for pathway in library.pathways.values():
        for step in pathway.steps.values():
            if isinstance(step, Branch):
                looks.update(2 * [name for row in step.rows for name, _ in row.when.terms])
            elif isinstance(step, Question):
                looks[step.ask] += 1
    return looks
