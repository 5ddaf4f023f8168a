"""The published formulas for SPIN, of walks that end, without the operator "next".

A formula is read at the moments a rule looks at alone (`seen`), so that neither the state before
the first moment nor those after the last count. Where it speaks of the next moment, or counts,
the moments are kept apart: between any two there is a state at which nothing is seen. "Next" then
is what comes after that, and every moment of P begins anew, which the published formulas count.
"""

from __future__ import annotations

from chamberwise.engine.model.rule import Extent, Pattern, Rule
from chamberwise.engine.patterns.formula import (
    FALSE,
    TRUE,
    And,
    Atom,
    Constant,
    Formula,
    Not,
    Or,
    Until,
    WeakUntil,
)

from tests.engine.patterns.every import Kind
from tests.engine.patterns.parsing import formula_in
from tests.engine.patterns.test_published_texts import TEXTS

SAVING: dict[tuple[Pattern, Extent], str] = {
    (Pattern.EXISTENCE, Extent.GLOBALLY): "P",
    (Pattern.EXISTENCE, Extent.AFTER): "P",
    (Pattern.EXISTENCE, Extent.AFTER_UNTIL): "P",
    (Pattern.PRECEDENCE, Extent.AFTER): "QS",
    (Pattern.RESPONSE, Extent.GLOBALLY): "S",
    (Pattern.RESPONSE, Extent.AFTER): "S",
    (Pattern.RESPONSE, Extent.AFTER_UNTIL): "S",
    (Pattern.CHAIN_RESPONSE, Extent.GLOBALLY): "S",
    (Pattern.RESPONDED_EXISTENCE, Extent.GLOBALLY): "S",
}
"""What one more moment would have to show for a rule to be kept that still can be."""


def kind_of(rule: Rule) -> Kind:
    return rule.pattern, rule.scope.extent, rule.times


def saving(rule: Rule) -> int:
    """Return the letters that would save a rule, as bits of P, Q, R and S; 0 if it needs none."""
    shown = SAVING.get((rule.pattern, rule.scope.extent), "")
    return sum(1 << "PQRS".index(name) for name in shown)


def name_of(kind: Kind) -> str:
    pattern, extent, times = kind
    return f"{pattern} {extent} {times}".replace(" ", "_").replace("-", "_")


def is_kept_apart(kind: Kind) -> bool:
    """Whether between any two moments there has to be a state at which nothing is seen."""
    return kind[0] in (
        Pattern.BOUNDED_EXISTENCE,
        Pattern.ALTERNATE_PRECEDENCE,
        Pattern.CHAIN_PRECEDENCE,
        Pattern.CHAIN_RESPONSE,
    )


def ltl(kind: Kind) -> str:
    """Return a formula as SPIN reads it: from the published words, or what breaks it, denied."""
    pattern, extent, times = kind
    if pattern is Pattern.BOUNDED_EXISTENCE:
        return f"!({once_too_often(extent, times)})"
    if pattern in BREAKS:
        return f"!({BREAKS[pattern]})"
    return _at_seen(formula_in(TEXTS[pattern, extent]))


BREAKS = {
    Pattern.ALTERNATE_PRECEDENCE: ("(!S U (P && !S)) || <>(P && (P U (!P && (!S U (P && !S)))))"),
    Pattern.CHAIN_PRECEDENCE: (
        "(!seen U (seen && P)) || <>(seen && !S && (seen U (!seen && (!seen U (seen && P)))))"
    ),
    Pattern.CHAIN_RESPONSE: ("<>(P && (seen U (!seen && (([] !seen) || (!seen U (seen && !S))))))"),
}
"""What breaks these, moments kept apart: of the formulas SPIN makes machines that are too big."""


def once_too_often(extent: Extent, times: int) -> str:
    """Return "P once more than so many times in the scope", moments kept apart."""
    if extent in (Extent.GLOBALLY, Extent.AFTER):
        text = "<>P"
        for _ in range(times):
            text = f"<>(P && <>(!P && {text}))"
        return text if extent is Extent.GLOBALLY else f"!Q U (Q && {text})"
    closed = "<>R" if extent is not Extent.AFTER_UNTIL else "true"
    text = f"(!R U (P && !R && {closed}))"
    for _ in range(times):
        text = f"(!R U (P && !R && (!R U (!P && !R && {text}))))"
    return text if extent is Extent.BEFORE else f"<>(Q && !R && {text})"


def _at_seen(meant: Formula) -> str:
    match meant:
        case Constant(value):
            return "true" if value else "false"
        case Atom(name):
            return name
        case Not(inner):
            return f"(!{_at_seen(inner)})"
        case And(left, right):
            return f"({_at_seen(left)} && {_at_seen(right)})"
        case Or(left, right):
            return f"({_at_seen(left)} || {_at_seen(right)})"
        case Until(left, right) if left == TRUE:
            return f"(<> (seen && {_at_seen(right)}))"
        case WeakUntil(left, right) if right == FALSE:
            return f"([] (!seen || {_at_seen(left)}))"
        case Until(left, right):
            return f"((!seen || {_at_seen(left)}) U (seen && {_at_seen(right)}))"
        case WeakUntil(left, right):
            return _weak_until(f"(!seen || {_at_seen(left)})", f"(seen && {_at_seen(right)})")
    raise TypeError(meant)


def _weak_until(left: str, right: str) -> str:
    """Said as a release, which SPIN turns into a smaller machine."""
    return f"({right} V ({left} || {right}))"
