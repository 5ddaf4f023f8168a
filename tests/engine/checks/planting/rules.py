"""Faults of safety rules: words defined again, and rules that cannot mean what was meant."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.rules.places import Said, happenings
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.step import Action, Outcome
from chamberwise.engine.model.words import Words
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.engine.reading.tree import Scalar, Table

from tests.engine.checks.planting.editing import Fault, Source

AGAIN = {
    "findings": "{title: T, about: eye, values: {a: {label: A}, b: {label: B}}}",
    "choices": "{title: T, positions: {a: {label: A, says: A, sources: [x]}, "
    "b: {label: B, says: B, sources: [x]}}}",
    "acts": "{title: T}",
    "rules": "{title: T, absence: {never: {outcome: any}}, harm: H, severity: minor, instead: S}",
}
NEW = "planted: {title: T, %s, harm: A harm., severity: minor, instead: Stop., sources: [SOURCE]}"
WRONG_RULES = {
    "universality: {always: ACT}": ("not-every-moment", "not every moment"),
    "universality: {always: [{asks: [FINDING]}]}": ("not-every-moment", "not every moment"),
    "absence: {never: {act: ACT, asks: FINDING}}": ("rule-cannot-be", "`act` and `asks`"),
    "response: {after: ACT, comes: {stale: FINDING, known: FINDING}}": ("rule-cannot-be", "stale"),
    "chain response: {directly after: ACT, comes: {outcome: any}}": (
        "rule-cannot-be",
        "acts alone",
    ),
    "chain precedence: {directly before: ACT, comes: ACT}, scope: {after: ACT}": (
        "unknown-key",
        "`scope`",
    ),
    "absence: {never: ACT}, scope: {after: ACT, until: ACT}": ("missing-key", "`until`"),
    "absence: {never: {}}": ("wrong-value", "`never`"),
    "absence: {never: {outcome: quite-another}}": ("not-defined", "`quite-another`"),
    "absence: {never: ACT}, existence: {some time: ACT}": ("unknown-key", "in one place"),
}


def faults(source: Source) -> Iterator[Fault]:
    """Yield every fault of rules, and of words that rules speak of."""
    file = source.loaded.files[source.file]
    words = file.words or (file.pathway.words if file.pathway else Words())
    if source.pathway:
        yield from _again(source)
    for rule in words.rules.values():
        yield from _of_rule(source, rule)
    if words.rules:
        yield from _wrong_rules(source)


def _again(source: Source) -> Iterator[Fault]:
    """Define each shared word once more, in a table that the pathway has."""
    shared = source.loaded.library.shared
    findings = shared.findings.values()
    names = {
        "findings": [each.id for each in findings if not each.choice],
        "choices": [each.id for each in findings if each.choice],
        "acts": list(shared.acts),
        "rules": list(shared.rules),
    }
    for table, entry in AGAIN.items():
        if not source.has(table):
            continue
        first = next(iter(source.at(table).entries))  # type: ignore[union-attr]
        line = source.key(table, first).span.line
        for name in names[table]:
            text = source.with_entry(f"{name}: {entry}", table, first)
            yield Fault(f"defined again in {table}", text, "redefined", line, f"`{name}`")


def _of_rule(source: Source, rule: Rule) -> Iterator[Fault]:
    at = ("rules", rule.id)
    if rule.sources:
        line = source.key(*at).span.line
        text = source.without(*at, "sources")
        yield Fault("rule without sources", text, "no-source", line, f"`{rule.id}`")
    for said in happenings(rule):
        yield from _of_happening(source, said)


def _of_happening(source: Source, said: Said) -> Iterator[Fault]:
    node = source.at(*said.pointer)
    if said.happening.acts:
        act = node if isinstance(node, Scalar) else source.at(*said.pointer, "act")
        for other in _never_done(source):
            text = source.replaced((act, other))
            yield Fault("act never done", text, "rule-says-nothing", act.span.line, f"`{other}`")
    if isinstance(node, Table) and "act" in node.entries and "outcome" not in node.entries:
        first = next(iter(node.entries))
        text = source.with_entry("outcome: any", *said.pointer, first)
        line = source.key(*said.pointer, first).span.line
        yield Fault("act and outcome", text, "rule-cannot-be", line, "`outcome`")


def _never_done(source: Source) -> list[str]:
    """Return the shared acts that no walk from here does, by lines of its steps."""
    library = source.loaded.library
    here = reached_by_handover(library, source.pathway.id) if source.pathway else library.pathways
    done = set()
    for name in here:
        for step in library.pathways[name].steps.values():
            lines = step.lines if isinstance(step, Action) else ()
            lines = step.owed if isinstance(step, Outcome) else lines
            done |= {line.act for line in lines}
    return [act for act in library.shared.acts if act not in done]


def _wrong_rules(source: Source) -> Iterator[Fault]:
    first = next(iter(source.at("rules").entries))  # type: ignore[union-attr]
    line = source.key("rules", first).span.line
    shared = source.loaded.library.shared
    names = {
        "ACT": next(iter(shared.acts)),
        "FINDING": next(iter(shared.findings)),
        "SOURCE": next(iter(shared.sources)),
    }
    for said, (slug, saying) in WRONG_RULES.items():
        entry = NEW % said
        for word, name in names.items():
            entry = entry.replace(word, name)
        text = source.with_entry(entry, "rules", first)
        yield Fault(f"wrong rule: {slug}", text, slug, line, saying)
