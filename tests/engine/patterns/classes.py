"""Regular expressions over moments that may show several atoms at once.

`<P!R|S>` stands for every moment that shows P and not R, or shows S; `.` for every moment.
"""

from __future__ import annotations

import re
from functools import cache

from automata.fa.dfa import DFA
from automata.fa.nfa import NFA
from chamberwise.engine.patterns.machine import Machine

from tests.engine.patterns.every import Letter, letters

SIGNS = "abcdefghijklmnop"
"""One sign for each set of at most four atoms."""


@cache
def automaton_of(text: str, atoms: tuple[str, ...], at_once: int = 4) -> DFA:
    """Return the automaton of an expression, made by automata-lib alone.

    A moment shows at most so many atoms `at_once`.
    """
    every = _signs(atoms, at_once)
    plain = re.sub(r"<([^>]*)>", lambda found: _class(found[1], every), text)
    return DFA.from_nfa(NFA.from_regex(plain, input_symbols=set(every)), minify=True)


def _signs(atoms: tuple[str, ...], at_once: int) -> dict[str, Letter]:
    every = zip(SIGNS, letters(atoms), strict=False)
    return {sign: letter for sign, letter in every if len(letter) <= at_once}


def _class(said: str, every: dict[str, Letter]) -> str:
    signs = [
        sign
        for sign, letter in every.items()
        if any(_shows(letter, wanted) for wanted in said.split("|"))
    ]
    return f"({'|'.join(signs)})"


def _shows(letter: Letter, wanted: str) -> bool:
    literals = re.findall(r"!?[PQRS]", wanted)
    assert "".join(literals) == wanted
    return all((each[-1] in letter) is not each.startswith("!") for each in literals)


def automaton_of_machine(watched: Machine, at_once: int = 4) -> DFA:
    """Return one of our machines in automata-lib's form."""
    signs = _signs(watched.atoms, at_once)
    return DFA(
        states=set(range(len(watched.after))),
        input_symbols=set(signs),
        transitions={
            state: {sign: row[SIGNS.index(sign)] for sign in signs}
            for state, row in enumerate(watched.after)
        },
        initial_state=0,
        final_states=set(watched.good),
    )


def walk_in(word: str, atoms: tuple[str, ...]) -> str:
    """Return what a word shows, moment by moment: `Q PQ -`."""
    every = _signs(atoms, len(atoms))
    return " ".join("".join(sorted(every[sign])) or "-" for sign in word)
