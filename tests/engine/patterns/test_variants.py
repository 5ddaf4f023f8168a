"""Variants of the patterns that are about and are not the same, each with a walk between them.

What ships is the first of each pair. The walks are the shortest there are, found by trying all; a
moment is written by the letters of what it shows.
"""

from __future__ import annotations

from dataclasses import dataclass

import pytest
from chamberwise.engine.model.rule import Extent, Pattern
from chamberwise.engine.patterns.formula import Formula, holds
from chamberwise.engine.patterns.published import formula_of

from tests.engine.patterns.every import Letter, words
from tests.engine.patterns.parsing import formula_in

ATOMS = ("P", "Q", "R", "S")


@dataclass(frozen=True)
class Variant:
    """A formula that is not ours, shortest walks between the two, and what ours says of them."""

    what: str
    pattern: Pattern
    text: str
    walks: tuple[str, ...]
    ours_holds: bool
    extent: Extent = Extent.GLOBALLY
    times: int = 0
    at_once: int = 1

    @property
    def ours(self) -> Formula:
        return formula_of(self.pattern, self.extent, self.times)


VARIANTS = (
    Variant(
        "alternate precedence without its next: no P could ever be served",
        Pattern.ALTERNATE_PRECEDENCE,
        "(!P W S) & [](P -> (!P W S))",
        ("S P",),
        True,
    ),
    Variant(
        "alternate precedence with a strong next: a walk could not end with P",
        Pattern.ALTERNATE_PRECEDENCE,
        "(!P W S) & [](P -> X(!P W S))",
        ("S P",),
        True,
    ),
    Variant(
        "chain precedence without its beginning: P could come first",
        Pattern.CHAIN_PRECEDENCE,
        "[](X P -> S)",
        ("P",),
        False,
    ),
    Variant(
        "chain response with a weak next: P could come last",
        Pattern.CHAIN_RESPONSE,
        "[](P -> WX S)",
        ("P",),
        False,
    ),
    Variant(
        "response strictly later: what shows both would not answer itself",
        Pattern.RESPONSE,
        "[](P -> X <>S)",
        ("PS",),
        True,
        at_once=2,
    ),
    Variant(
        "not succession with the scope of always cut short",
        Pattern.ABSENCE,
        "[]Q -> !<>P",
        ("Q P",),
        False,
        extent=Extent.AFTER,
    ),
    Variant(
        "precedence of the older page: S and P at once would be wrong",
        Pattern.PRECEDENCE,
        "<>P -> (!P U (S & !P))",
        ("PS",),
        True,
        at_once=2,
    ),
    Variant(
        "bounded existence counting how often P begins",
        Pattern.BOUNDED_EXISTENCE,
        "!P W (P W (!P W (P W []!P)))",
        ("P P P",),
        False,
        times=2,
    ),
    Variant(
        "existence before R of the older page: P with R at once would do",
        Pattern.EXISTENCE,
        "<>R -> (!R U P)",
        ("PR",),
        False,
        extent=Extent.BEFORE,
        at_once=2,
    ),
    Variant(
        "existence between Q and R of the older page: Q and R at once would open a scope",
        Pattern.EXISTENCE,
        "[]((Q & <>R) -> (!R U P))",
        ("QR",),
        True,
        extent=Extent.BETWEEN,
        at_once=2,
    ),
    Variant(
        "existence after each Q, where the published scope asks for P after some Q",
        Pattern.EXISTENCE,
        "[](Q -> <>P)",
        ("Q P Q",),
        True,
        extent=Extent.AFTER,
    ),
    Variant(
        "precedence after each Q, where the published scope lets any Q serve, a later one too",
        Pattern.PRECEDENCE,
        "[](Q -> (!P W S))",
        ("Q P Q",),
        True,
        extent=Extent.AFTER,
    ),
)


def walk_in(text: str) -> tuple[Letter, ...]:
    return tuple(frozenset(moment) - {"-"} for moment in text.split())


def written(walk: tuple[Letter, ...]) -> str:
    return " ".join("".join(sorted(moment)) or "-" for moment in walk)


@pytest.mark.parametrize("variant", VARIANTS, ids=lambda each: each.what)
def test_the_shortest_walk_between_a_variant_and_ours(variant: Variant) -> None:
    ours, theirs = variant.ours, formula_in(variant.text)
    differ = [
        walk
        for walk in words(ATOMS, len(variant.walks[0].split()))
        if all(len(moment) <= variant.at_once for moment in walk)
        and holds(ours, walk) is not holds(theirs, walk)
    ]
    shortest = min(map(len, differ))
    assert {written(walk) for walk in differ if len(walk) == shortest} >= {*variant.walks}
    assert {holds(ours, walk_in(walk)) for walk in variant.walks} == {variant.ours_holds}


def test_after_each_is_what_the_published_after_is_not() -> None:
    """The scope `after each` without `until` asks it of every Q; R is then never shown."""
    for pattern, text in (
        (Pattern.EXISTENCE, "[](Q -> <>P)"),
        (Pattern.PRECEDENCE, "[](Q -> (!P W S))"),
    ):
        each = formula_of(pattern, Extent.AFTER_UNTIL)
        for walk in words(("P", "Q", "S"), 4):
            assert holds(each, walk) is holds(formula_in(text), walk)


@pytest.mark.parametrize("extent", [Extent.BEFORE, Extent.BETWEEN, Extent.AFTER_UNTIL])
def test_a_bound_counts_nothing_at_the_closing_moment(extent: Extent) -> None:
    at_most_one = formula_of(Pattern.BOUNDED_EXISTENCE, extent, 1)
    assert holds(at_most_one, walk_in("Q P PR"))
    assert not holds(at_most_one, walk_in("Q P P R"))
