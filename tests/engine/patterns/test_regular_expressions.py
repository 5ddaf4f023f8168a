"""The machines against regular expressions, built and compared by another library.

The expressions are written from what the patterns say in words, not from their formulas.
"""

from __future__ import annotations

import pytest
from chamberwise.engine.model.rule import Extent, Pattern

from tests.engine.patterns.classes import automaton_of, automaton_of_machine
from tests.engine.patterns.every import KINDS, Kind, machine, named

SHUT = "<!Q|R>*"
UNCLOSED = "(<Q!R><!R>*)?"


def between(stretch: str) -> str:
    """Every stretch from Q that is closed by R is one of these."""
    return f"{SHUT}(({stretch})<R>{SHUT})*{UNCLOSED}"


def after_until(stretch: str) -> str:
    """Every stretch from Q, closed or not, is one of these."""
    return f"{SHUT}(({stretch})<R>{SHUT})*({stretch})?"


def before(stretch: str) -> str:
    """Up to the first R it is one of these; without an R all is well."""
    return f"<!R>*|({stretch})<R>.*"


def simple(p: str) -> tuple[str, ...]:
    """Every moment of the scope shows, or does not show, P."""
    stretch = f"<Q!R{p}><{p}!R>*"
    return (
        f"<{p}>*",
        before(f"<{p}!R>*"),
        f"<!Q>*(<Q{p}><{p}>*)?",
        between(stretch),
        after_until(stretch),
    )


MET = "(<Q!RP>|<Q!R!P><!R!P>*<P!R>)(<!R!Q|!RP>|<Q!R!P><!R!P>*<P!R>)*"
EXISTENCE = (
    "<!P>*<P>.*",
    "<!R>*|<!P!R>*<P!R>.*",
    "<!Q>*|<!Q>*<QP>.*|<!Q>*<Q>.*<P>.*",
    between(MET),
    after_until(MET),
)

WAITING = "<Q!R!S!P><!P!S!R>*"
SERVED = f"(<Q!RS>|{WAITING}<S!R>)(<!Q!R>|<Q!RS>|{WAITING}<S!R>)*"
OPEN = f"{SERVED}|{SERVED}{WAITING}|{WAITING}"
PRECEDENCE = (
    "<!P!S>*(<S>.*)?",
    "<!R>*|<!P!R!S>*<S|R>.*",
    "<!Q>*|.*(<Q!P!S><!P!S>*(<S>.*)?|<QS>.*)",
    between(OPEN),
    after_until(OPEN),
)

ANSWERED = "(<!P|S>|<P!S><!S>*<S>)*"
ANSWERED_SO_FAR = "(<!P!R|S!R>|<P!S!R><!S!R>*<S!R>)*"
FROM_Q = f"(<Q!R!P|Q!RS>|<Q!RP!S><!S!R>*<S!R>){ANSWERED_SO_FAR}"
RESPONSE = (
    ANSWERED,
    before(ANSWERED_SO_FAR),
    f"<!Q>*((<Q!P|QS>|<QP!S><!S>*<S>){ANSWERED})?",
    between(FROM_Q),
    after_until(FROM_Q),
)


def bounded(times: int) -> tuple[str, ...]:
    def counted(rest: str, of: int) -> str:
        several = f"(<P{rest}><!P{rest}>*){{0,{of}}}" if of else ""
        return f"<!P{rest}>*{several}"

    def from_q(rest: str) -> str:
        first = f"<Q!P{rest}>{counted(rest, times)}"
        return f"{first}|<QP{rest}>{counted(rest, times - 1)}" if times else first

    return (
        counted("", times),
        before(counted("!R", times)),
        f"<!Q>*({from_q('')})?",
        between(from_q("!R")),
        after_until(from_q("!R")),
    )


SCOPED = {
    Pattern.ABSENCE: simple("!P"),
    Pattern.UNIVERSALITY: simple("P"),
    Pattern.EXISTENCE: EXISTENCE,
    Pattern.PRECEDENCE: PRECEDENCE,
    Pattern.RESPONSE: RESPONSE,
}

UNSCOPED = {
    Pattern.ALTERNATE_PRECEDENCE: "(<!P!S>|<SP>|<S!P><!P>*<P>)*(<S!P><!P>*)?",
    Pattern.CHAIN_PRECEDENCE: "(<!P!S>|<S!P><S>*<!S>)*(<S!P><S>*)?",
    Pattern.CHAIN_RESPONSE: "(<!P>|<P>(<SP>)*<S!P>)*",
    Pattern.RESPONDED_EXISTENCE: "<!P>*|.*<S>.*",
    Pattern.NOT_CO_EXISTENCE: "<!P>*|<!S>*",
}


def expression(kind: Kind) -> str:
    pattern, extent, times = kind
    if pattern in UNSCOPED:
        return UNSCOPED[pattern]
    texts = bounded(times) if pattern is Pattern.BOUNDED_EXISTENCE else SCOPED[pattern]
    return texts[list(Extent).index(extent)]


@pytest.mark.parametrize("kind", KINDS, ids=named)
def test_the_machine_takes_the_same_walks_as_the_expression(kind: Kind) -> None:
    watched = machine(kind)
    theirs = automaton_of(expression(kind), watched.atoms)
    assert automaton_of_machine(watched) == theirs
    sink = watched.lost is not None
    assert len(theirs.states) == len(watched.after) - sink
