"""Formulas as the literature prints them, read: `[]`, `<>`, `!`, `&`, `|`, `->`, U, W, X and WX.

SPIN's own are read as well: V for release, `true`, and `seen` as a name.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from chamberwise.engine.patterns.formula import (
    TRUE,
    Atom,
    Formula,
    Next,
    Until,
    WeakNext,
    WeakUntil,
    always,
    some_time,
)

TOKEN = re.compile(r"\[\]|<>|->|WX|true|seen|[()!&|UVWXPQRS]")

BEFORE: dict[str, Callable[[Formula], Formula]] = {
    "!": lambda inner: ~inner,
    "[]": always,
    "<>": some_time,
    "X": Next,
    "WX": WeakNext,
}

BETWEEN: list[dict[str, Callable[[Formula, Formula], Formula]]] = [
    {"->": lambda left, right: left >> right},
    {"|": lambda left, right: left | right},
    {"&": lambda left, right: left & right},
    {"U": Until, "W": WeakUntil, "V": lambda left, right: ~Until(~left, ~right)},
]
"""What binds least first; of the same, the left first."""


def formula_in(text: str) -> Formula:
    """Return the formula that a text prints. Raises `ValueError` for anything else."""
    tokens = TOKEN.findall(text)
    if "".join(tokens) != re.sub(r"\s", "", text):
        raise ValueError(text)
    found = _between(tokens, 0)
    if tokens:
        raise ValueError(text)
    return found


def _between(tokens: list[str], level: int) -> Formula:
    if level == len(BETWEEN):
        return _alone(tokens)
    left = _between(tokens, level + 1)
    while tokens and tokens[0] in BETWEEN[level]:
        join = BETWEEN[level][tokens.pop(0)]
        left = join(left, _between(tokens, level + 1))
    return left


def _alone(tokens: list[str]) -> Formula:
    if not tokens:
        raise ValueError("the formula stops short")
    first = tokens.pop(0)
    if first in BEFORE:
        return BEFORE[first](_alone(tokens))
    if first == "true":
        return TRUE
    if first != "(":
        return Atom(first)
    inner = _between(tokens, 0)
    if not tokens or tokens.pop(0) != ")":
        raise ValueError("a bracket stays open")
    return inner
