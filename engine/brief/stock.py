"""Reading a unit's file of stock."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from typing import Any

from chamberwise.engine.brief import codes
from chamberwise.engine.brief.case import Head, Stock, StockedLens
from chamberwise.engine.brief.form import STOCK
from chamberwise.engine.diagnostics.problem import Pointer, Problem
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading import source_text
from chamberwise.engine.reading.read import read
from chamberwise.engine.reading.tree import Tree, parse
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.form import Input, between
from chamberwise.engine.working.given import tried
from chamberwise.engine.working.optics.inputs import A_CONSTANT, LENS
from chamberwise.engine.working.refusal import RefusedError
from chamberwise.engine.working.scalars import number

COUNT = Input(name="count", meaning=N_("how many there are"), example="2", hard=between("0", "999"))


@dataclass(frozen=True, slots=True)
class ReadStock:
    """The stock, unless the file cannot be used; its problems and its text, to show them."""

    stock: Stock | None
    problems: tuple[Problem, ...]
    texts: dict[str, str]


def read_stock(path: Path) -> ReadStock:
    """Return the stock of a file and every problem of it."""
    shown_as = str(path)
    text, problems = source_text.load(path, shown_as)
    problems = [*problems, *(source_text.refusals(text, shown_as) if text is not None else ())]
    if text is None or problems:
        return ReadStock(None, tuple(problems), {})
    tree = parse(text, shown_as)
    raw = read(tree, STOCK) or {}
    lenses = tuple(_lenses(tree, raw.get("lenses") or {}))
    texts = {shown_as: text}
    if tree.problems:
        return ReadStock(None, tuple(tree.problems), texts)
    stock = Stock(
        unit=raw["stock"],
        counted=raw["counted"].isoformat(),
        lenses=lenses,
        head=head_of(raw),
        sulcus=raw.get("sulcus", ""),
        lidocaine=raw.get("lidocaine limit", "lower"),
    )
    return ReadStock(stock, (), texts)


def head_of(raw: dict[str, Any]) -> Head:
    """Return what a file says of the list as a whole."""
    day = raw.get("day")
    return Head(
        title=raw.get("list", ""),
        day=day.isoformat() if day else "",
        reader=raw.get("reader", ""),
        takes_over=raw.get("takes over", ""),
        stop_word=raw.get("stop word", ""),
    )


def _lenses(tree: Tree, raw: dict[str, Any]) -> Iterator[StockedLens]:
    for name, each in raw.items():
        at: Pointer = ("lenses", name)
        constant = _figure(tree, A_CONSTANT, each.get("a-constant"), (*at, "a-constant"))
        counts: dict[Decimal, int] = {}
        for place, row in enumerate(each.get("powers") or ()):
            where = (*at, "powers", place)
            power = _figure(tree, LENS, row and row.get("power"), (*where, "power"))
            count = _figure(tree, COUNT, row and row.get("count"), (*where, "count"))
            if power is None or count is None:
                continue
            if power in counts:
                _report(
                    tree,
                    where,
                    _("{power} D stands twice").format(power=plain(power)),
                    _("Put the two counts together."),
                )
            counts[power] = int(count)
        if constant is not None and "kind" in each and "title" in each:
            yield StockedLens(name, each["title"], each["kind"], constant, counts)


def _figure(tree: Tree, of: Input, text: str | None, at: Pointer) -> Decimal | None:
    if text is None:
        return None
    try:
        tried(of, text)
    except RefusedError as error:
        first = error.refusals[0]
        _report(tree, at, first.what, f"{first.why} {first.fix}")
        return None
    return number(of, text).value


def _report(tree: Tree, at: Pointer, message: str, advice: str) -> None:
    tree.report(codes.FIGURE.at(tree.file, at, tree.span(at), message, advice))
