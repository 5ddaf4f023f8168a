"""The formulas are those of the literature, word for word.

Patterns with scopes: "Property Pattern Mappings for LTL", matthewbdwyer.github.io/psp/patterns/
ltl.html, of Dwyer, Avrunin and Corbett's specification patterns, read; two brackets that the page
closes without opening, or the other way about, are set right. Patterns without a scope: Declare,
from memory of Di Ciccio and Montali, "Declarative process specifications", 2022, chapter 4.
"""

from __future__ import annotations

import pytest
from chamberwise.engine.model.rule import Extent, Pattern
from chamberwise.engine.patterns.formula import Formula
from chamberwise.engine.patterns.published import SCOPED, UNSCOPED

from tests.engine.patterns.parsing import formula_in

SCOPED_TEXTS = {
    Pattern.ABSENCE: (
        "[](!P)",
        "<>R -> (!P U R)",
        "[](Q -> [](!P))",
        "[]((Q & !R & <>R) -> (!P U R))",
        "[](Q & !R -> (!P W R))",
    ),
    Pattern.EXISTENCE: (
        "<>(P)",
        "!R W (P & !R)",
        "[](!Q) | <>(Q & <>P)",
        "[](Q & !R -> (!R W (P & !R)))",
        "[](Q & !R -> (!R U (P & !R)))",
    ),
    Pattern.UNIVERSALITY: (
        "[](P)",
        "<>R -> (P U R)",
        "[](Q -> [](P))",
        "[]((Q & !R & <>R) -> (P U R))",
        "[](Q & !R -> (P W R))",
    ),
    Pattern.PRECEDENCE: (
        "!P W S",
        "<>R -> (!P U (S | R))",
        "[]!Q | <>(Q & (!P W S))",
        "[]((Q & !R & <>R) -> (!P U (S | R)))",
        "[](Q & !R -> (!P W (S | R)))",
    ),
    Pattern.RESPONSE: (
        "[](P -> <>S)",
        "<>R -> (P -> (!R U (S & !R))) U R",
        "[](Q -> [](P -> <>S))",
        "[]((Q & !R & <>R) -> (P -> (!R U (S & !R))) U R)",
        "[](Q & !R -> ((P -> (!R U (S & !R))) W R))",
    ),
}
"""Globally, before R, after Q, between Q and R, after Q until R."""

UNSCOPED_TEXTS = {
    Pattern.ALTERNATE_PRECEDENCE: "(!P W S) & [](P -> WX(!P W S))",
    Pattern.CHAIN_PRECEDENCE: "!P & [](X P -> S)",
    Pattern.CHAIN_RESPONSE: "[](P -> X S)",
    Pattern.RESPONDED_EXISTENCE: "<>P -> <>S",
    Pattern.NOT_CO_EXISTENCE: "!(<>P & <>S)",
}

TEXTS: dict[tuple[Pattern, Extent], str] = {
    **{
        (pattern, extent): text
        for pattern, texts in SCOPED_TEXTS.items()
        for extent, text in zip(Extent, texts, strict=True)
    },
    **{(pattern, Extent.GLOBALLY): text for pattern, text in UNSCOPED_TEXTS.items()},
}


def shipped(pattern: Pattern, extent: Extent) -> Formula:
    return UNSCOPED[pattern] if pattern in UNSCOPED else SCOPED[pattern][extent]


@pytest.mark.parametrize(("pattern", "extent"), TEXTS, ids=lambda each: str(each))
def test_the_formula_is_the_published_one(pattern: Pattern, extent: Extent) -> None:
    assert shipped(pattern, extent) == formula_in(TEXTS[pattern, extent])


def test_every_pattern_has_its_text_but_bounded_existence() -> None:
    every = {(pattern, extent) for pattern in SCOPED for extent in SCOPED[pattern]}
    assert {*TEXTS} == every | {(pattern, Extent.GLOBALLY) for pattern in UNSCOPED}
    assert {*SCOPED, *UNSCOPED, Pattern.BOUNDED_EXISTENCE} == {*Pattern}


@pytest.mark.parametrize("text", ["P &", "(P", "P)", "P Q", "T", "P -> "])
def test_what_is_no_formula_is_not_read(text: str) -> None:
    with pytest.raises(ValueError, match=r".*"):
        formula_in(text)
