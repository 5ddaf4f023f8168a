"""A finding, choice, act, duty, kit item, source or phase that nobody has defined."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from chamberwise.engine.checks.references import Of, references
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Problem, Severity

CODE = Code(
    "not-defined",
    Severity.ERROR,
    "A name nobody has defined",
    "A mistyped name ties a step to nothing: no rule, kit list or duty would hold for it.",
)

_TABLES = {
    Of.FINDING: "findings",
    Of.CHOICE: "choices",
    Of.ACT: "acts",
    Of.DUTY: "duties",
    Of.KIT: "kit",
    Of.SOURCE: "sources",
    Of.PHASE: "phases",
}


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every name that is not defined for this pathway."""
    if not subject.definitions_are_whole:
        return
    for reference in references(subject.pathway):
        if reference.value_of is not None:
            continue
        known = _known(subject, reference.of)
        if reference.name not in known and (known or reference.of is not Of.PHASE):
            message = f"{reference.of} `{reference.name}` is not defined"
            otherwise = _how_to_define(reference.of, reference.name)
            advice = did_you_mean(reference.name, known, otherwise)
            at_key = reference.pointer[-1] == reference.name
            yield subject.problem(CODE, reference.pointer, message, advice, at_key=at_key)


_EXAMPLES = {
    Of.ACT: "{title: What is done}",
    Of.DUTY: "{title: What the duty is called}",
    Of.KIT: "{title: What it is called}",
    Of.SOURCE: "{cite: Where it stands, mark: local}",
    Of.PHASE: "What the phase is called",
}


def _how_to_define(of: Of, name: str) -> str:
    example = f": `  {name}: {_EXAMPLES[of]}`" if of in _EXAMPLES else ""
    shown = " `chamberwise list --words` shows the shared ones." if of is not Of.PHASE else ""
    return f"Define it under `{_TABLES[of]}:` in this file{example}.{shown}"


def _known(subject: Subject, of: Of) -> Mapping[str, Any]:
    words = subject.words
    match of:
        case Of.FINDING:
            return words.findings
        case Of.CHOICE:
            return {name: each for name, each in words.findings.items() if each.choice}
        case Of.ACT:
            return words.acts
        case Of.DUTY:
            return words.duties
        case Of.KIT:
            return words.kit
        case Of.SOURCE:
            return words.sources
        case Of.PHASE:
            return subject.pathway.phases
