"""A small language of formulas: what is shown is what is computed.

`1336 / (AL - ELP)`: numbers, symbols, `+ - * / ^`, brackets, and `sqrt`, `max`, `min` and `tan`,
whose angle is in degrees. Everything is decimal.
"""

from __future__ import annotations

import ast
import math
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import cache

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.working.digits import pointed

Values = Mapping[str, Decimal]
Evaluate = Callable[[Values], Decimal]

_SYMBOL = re.compile(r"[A-Za-z_]\w*(?!\w|\()")
_SIGNS = str.maketrans({"*": "×"})


@dataclass(frozen=True, slots=True)
class Formula:
    """A formula as it is written, and what it makes of values for its symbols."""

    written: str
    evaluate: Evaluate

    @property
    def shown(self) -> str:
        """The formula in symbols, as it is printed."""
        return _as_written(self.written.translate(_SIGNS))

    def with_numbers(self, values: Values) -> str:
        """Return the formula with a number in the place of each symbol."""
        written = self.written.translate(_SIGNS)
        return _as_written(
            _SYMBOL.sub(lambda found: _bracketed(pointed(values[found.group()])), written)
        )


def _as_written(formula: str) -> str:
    """Return a formula with decimals as the language writes them; a comma parts no values then."""
    if decimal(".") == ".":
        return formula
    return decimal(formula.replace(",", ";"))


def _bracketed(number: str) -> str:
    return f"({number})" if number.startswith("-") else number


@cache
def formula(written: str) -> Formula:
    """Return a formula as one that can be computed. Raises `ValueError` where it is none.

    >>> formula("337.5 / K").evaluate({"K": Decimal("43.5")}).quantize(Decimal("0.0001"))
    Decimal('7.7586')
    >>> formula("a - 2 * b").with_numbers({"a": Decimal(1), "b": Decimal("-0.50")})
    '1 - 2 × (-0.5)'
    """
    source = written.replace("^", "**")
    return Formula(written, _compiled(ast.parse(source, mode="eval").body, source))


def _compiled(node: ast.expr, source: str) -> Evaluate:
    match node:
        case ast.Constant():
            number = Decimal(ast.get_source_segment(source, node) or "")
            return lambda _: number
        case ast.Name(id=name):
            return lambda values: values[name]
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            inner = _compiled(operand, source)
            return lambda values: -inner(values)
        case ast.BinOp(left=left, op=operator, right=right):
            return _binary(operator, _compiled(left, source), _compiled(right, source))
        case ast.Call(func=ast.Name(id=name), args=given):
            work, inners = _FUNCTIONS[name], [_compiled(each, source) for each in given]
            return lambda values: work(*(inner(values) for inner in inners))
    raise ValueError(f"`{source}` is no formula")


def _binary(operator: ast.operator, left: Evaluate, right: Evaluate) -> Evaluate:
    match operator:
        case ast.Add():
            return lambda values: left(values) + right(values)
        case ast.Sub():
            return lambda values: left(values) - right(values)
        case ast.Mult():
            return lambda values: left(values) * right(values)
        case ast.Div():
            return lambda values: left(values) / right(values)
        case ast.Pow():
            return lambda values: left(values) ** right(values)
    raise ValueError("a formula has no such sign")


def _tangent(degrees: Decimal) -> Decimal:
    return Decimal(repr(math.tan(math.radians(degrees))))


_FUNCTIONS: Mapping[str, Callable[..., Decimal]] = {
    "sqrt": Decimal.sqrt,
    "max": max,
    "min": min,
    "tan": _tangent,
}
