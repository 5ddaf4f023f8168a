"""A working in the making. Each line is computed from the digits printed in the lines before it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from decimal import Decimal, DivisionByZero, InvalidOperation, localcontext

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.digits import plain, rounded, shown, signed
from chamberwise.engine.working.formula import formula
from chamberwise.engine.working.refusal import refused
from chamberwise.engine.working.working import Heading, Line, Result, Step, Table

PLACES = 6
"""Decimal places of a line that leads on to others."""


class Sheet:
    """Lines, results, tables and remarks as they are written; symbols keep their last value.

    Rounded, as it is printed, every line follows by hand from the printed digits of the others.
    Exact, nothing is rounded on the way: for laws such as that a round trip closes. Without
    `keeps_lines` only results and tables are kept, which is much faster for a long list.
    """

    def __init__(self, *, exact: bool = False, keeps_lines: bool = True) -> None:
        self.exact = exact
        self.keeps_lines = keeps_lines
        self.lines: list[Line | Heading | Step] = []
        self.results: list[Result] = []
        self.tables: list[Table] = []
        self.remarks: list[str] = []
        self._values: dict[str, Decimal] = {}

    def __getitem__(self, symbol: str) -> Decimal:
        return self._values[symbol]

    def take(self, symbol: str, value: Decimal | str) -> None:
        """Let a symbol stand for a number that was given or is a constant."""
        self._values[symbol] = Decimal(value)

    def fix(self, symbol: str, value: str, title: str) -> None:
        """Let a symbol stand for a constant of the formula itself, and say so."""
        self.take(symbol, value)
        self.say(f"{symbol} = {decimal(value)}, {title}.")

    def head(self, title: str) -> None:
        """Begin a part."""
        self.lines.append(Heading(title))

    def say(self, text: str) -> None:
        """Put a sentence between the lines."""
        self.lines.append(Step(text))

    def work(
        self, symbol: str, title: str, written: str, unit: str = "", places: int = PLACES
    ) -> Decimal:
        """Work a line and return its value. Raises `RefusedError` where it has none."""
        asked = formula(written)
        try:
            with localcontext() as context:
                context.prec = 28
                value = asked.evaluate(self._values)
                value = value if self.exact else rounded(value, places)
        except (DivisionByZero, InvalidOperation, ZeroDivisionError, OverflowError):
            raise refused(
                "",
                _("the line `{symbol} = {asked}` has no value for these inputs").format(
                    symbol=symbol, asked=asked.shown
                ),
                _("The eye described cannot be worked by this formula."),
                _("Look at each input again, and at its unit."),
            ) from None
        if self.keeps_lines:
            numbers = asked.with_numbers(self._values)
            told = shown(value, places)
            self.lines.append(Line(symbol, title, asked.shown, numbers, value, told, unit))
        self._values[symbol] = value
        return value

    def conclude(
        self, name: str, title: str, value: Decimal, unit: str, places: int, *, sign: bool = False
    ) -> None:
        """Give a figure that was asked for."""
        told = value if self.exact else rounded(value, places)
        text = (signed if sign else plain)(rounded(value, places))
        self.results.append(Result(name, title, told, f"{text} {unit}".strip()))

    def answer(self, name: str, title: str, words: str) -> None:
        """Give an answer that is no figure."""
        self.results.append(Result(name, title, None, words))

    def appoint(self, name: str, title: str, day: date, words: str) -> None:
        """Give a day that was asked for."""
        self.results.append(Result(name, title, None, words, day))

    def tabulate(self, title: str, heads: tuple[str, ...], rows: Sequence[tuple[str, ...]]) -> None:
        """Put figures side by side; heads are marked, and told here."""
        told = tuple(map(_, heads))
        self.tables.append(Table(title, told, tuple(rows), heads))

    def remark(self, text: str) -> None:
        """Remark on something to know; said once."""
        if text not in self.remarks:
            self.remarks.append(text)
