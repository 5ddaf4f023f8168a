"""The machines against the published expressions over events, where one moment shows one event.

"Property Pattern Mappings for QREs", matthewbdwyer.github.io/psp/patterns/qre.html, read; as it
stands there but for blanks. `[- P,R]` is any event but P and R, `;` follows, `^k` is repeated.
"""

from __future__ import annotations

import re

import pytest
from automata.fa.dfa import DFA
from chamberwise.engine.model.rule import Extent, Pattern

from tests.engine.patterns.classes import automaton_of, automaton_of_machine, walk_in
from tests.engine.patterns.every import Kind, machine, named

ABSENCE = (
    "[- P]*",
    "[- R]* | [- P,R]*; R; .*",
    "[- Q]*; (Q; [- P]*)?",
    "([- Q]*; Q; [- P,R]*; R)*; [- Q]*; (Q; [- R]*)?",
    "([- Q]*; Q; [- P,R]*; R)*; [- Q]*; (Q; [- P,R]*)?",
)
EXISTENCE = (
    "[- P]*; P; .*",
    "[- R]* | [- P,R]*; P; .*",
    "[- Q]*; (Q; [- P]*; P; .*)?",
    "([- Q]*; Q; [- P,R]*; P; [- R]*; R)*; [- Q]*; (Q; [- R]*)?",
    "([- Q]*; Q; [- P,R]*; P; [- R]*; R)*; [- Q]*; (Q; [- P,R]*; P; [- R]*)?",
)
BOUNDED = (
    "(([- P]*; P)?)^k; [- P]*",
    "[- R]* | (([- P,R]*; P)?)^k; [- P,R]*; R; .*",
    "[- Q]*; (Q; (([- P]*; P)?)^k; [- P]*)?",
    "([- Q]*; Q; (([- P,R]*; P)?)^k; [- P,R]*; R)*; [- Q]*; (Q; [- R]*)?",
    "([- Q]*; Q; (([- P,R]*; P)?)^k; [- P,R]*; R)*; [- Q]*; (Q; (([- P,R]*; P)?)^k; [- P,R]*)?",
)

TEXTS: dict[Kind, str] = {
    (pattern, extent, times): text
    for pattern, texts, bounds in (
        (Pattern.ABSENCE, ABSENCE, (0,)),
        (Pattern.EXISTENCE, EXISTENCE, (0,)),
        (Pattern.BOUNDED_EXISTENCE, BOUNDED, (1, 2, 3)),
    )
    for extent, text in zip(Extent, texts, strict=True)
    for times in bounds
}

UNLIKE: dict[Kind, str] = {
    (Pattern.EXISTENCE, Extent.BETWEEN, 0): "Q P Q R",
    (Pattern.EXISTENCE, Extent.AFTER_UNTIL, 0): "Q P Q",
}
"""Where the two published mappings differ, with a shortest walk: in the logic, which is ours, the

scope opens anew with every Q; over events it stays the one that is open.
"""


def published(kind: Kind) -> DFA:
    text = re.sub(r"\[- ([PQR,]+)\]", lambda found: _none_of(found[1]), TEXTS[kind])
    text = re.sub(r"(?<![!PQR])([PQR])(?![PQR!>])", r"<\1>", text)
    text = text.replace("^k", f"{{{kind[2]}}}").replace(";", "").replace(" ", "")
    return automaton_of(text, machine(kind).atoms, 1)


def _none_of(names: str) -> str:
    return "<" + "".join(f"!{name}" for name in names.split(",")) + ">"


@pytest.mark.parametrize("kind", [kind for kind in TEXTS if kind not in UNLIKE], ids=named)
def test_over_single_events_the_machine_takes_what_is_published(kind: Kind) -> None:
    assert automaton_of_machine(machine(kind), 1) == published(kind)


@pytest.mark.parametrize("kind", UNLIKE, ids=named)
def test_the_two_published_mappings_differ_where_a_scope_opens_again(kind: Kind) -> None:
    watched = machine(kind)
    theirs, ours = published(kind), automaton_of_machine(watched, 1)
    differ = theirs.symmetric_difference(ours)
    shortest = {walk_in(word, watched.atoms) for word in _shortest(differ)}
    assert UNLIKE[kind] in shortest
    assert ours < theirs


def _shortest(language: DFA) -> list[str]:
    return list(language.words_of_length(language.minimum_word_length()))
