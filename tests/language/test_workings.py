"""Calculations in another language: all is told, and no number is read in two ways.

That German writes decimals with a comma and thousands with a point is of CLDR (`de`), read here
through Babel, which the program asks as well: `test_numbers_are_those_of_the_locale`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from babel.numbers import parse_decimal
from chamberwise.engine.language.speaking import speaking
from chamberwise.engine.working.form import Calculation
from chamberwise.engine.working.refusal import RefusedError
from chamberwise.engine.working.registry import NAMES, calculation, calculations
from chamberwise.engine.working.run import worked
from chamberwise.engine.working.working import Heading, Step, Working

from tests.conformance.working_out import example, refusals, work
from tests.language.bracketed import bracketed, untold

UNITS = frozenset(
    [
        "mm",
        "cm",
        "D",
        "mg",
        "mL",
        "g",
        "kg",
        "mmHg",
        "min",
        "h",
        "d",
        "s",
        "L",
        "uL",
        "ug",
        "percent",
        "lb",
        "st",
        "in",
        "inch",
    ]
)
NAMED = frozenset(
    [
        "SRK",
        "T",
        "Holladay",
        "Hoffer",
        "Q",
        "Rx",
        "A",
        "n",
        "V",
        "GB-ENG",
        "rule-of-nines",
        "chart",
        "dubey",
    ]
)
"""Formulas, symbols of lines, and ways that are chosen by their name."""
DAY = re.compile(r"\w+\. \d+\. \w+\.? \d{4}")


def texts(found: Working) -> Iterator[str]:
    yield from (found.title, *found.remarks, *found.limits, *found.cautions)
    yield from (part for each in found.given for part in (each.meaning, each.value))
    yield from (part for each in found.results for part in (each.title, each.shown))
    for table in found.tables:
        yield from (table.title, *table.heads, *(cell for row in table.rows for cell in row))
    for line in found.lines:
        match line:
            case Heading(title=title):
                yield title
            case Step(text=said):
                yield said
            case _:
                yield line.title


def slugs(of: Calculation) -> frozenset[str]:
    """What is typed for it, whatever language is spoken."""
    words = " ".join(word for each in of.inputs for word in (*each.names, *each.words))
    return frozenset(untold(words))


@pytest.mark.parametrize("name", NAMES)
def test_all_of_a_working_is_told(name: str) -> None:
    with bracketed():
        of = calculation(name)
        known = UNITS | NAMED | slugs(of)
        found = worked(of, example(of))
        assert {word for text in texts(found) for word in untold(DAY.sub("", text), known)} == set()
        asked = [(each.meaning, each.outside) for each in of.inputs]
        assert [pair for pair in asked if untold(" ".join(pair), known)] == []
        assert untold(of.purpose) == []


@pytest.mark.parametrize("name", NAMES)
def test_all_of_a_refusal_is_told(name: str) -> None:
    with bracketed():
        of = calculation(name)
        known = UNITS | NAMED | slugs(of)
        for each in of.inputs:
            for text in ("", "9999999", "x y z", "1.2.3"):
                if text or each.required:
                    try:
                        worked(of, example(of) | {each.name: text})
                    except RefusedError as error:
                        said = " ".join(map(str, error.refusals)).replace("x y z", "")
                        assert untold(said, known) == []


def test_the_tables_of_a_program_keep_their_keys() -> None:
    with bracketed():
        table = work("formula-spread").tables[0]
    assert table.keys == ("formula", "power")
    assert table.heads == ("⟦formula⟧", "⟦power⟧")


@pytest.mark.parametrize("name", NAMES)
def test_an_example_shown_can_be_typed_and_gives_what_it_gives_in_english(name: str) -> None:
    english = work(name)
    with speaking("de"):
        german = work(name)
    assert [each.value for each in german.results] == [each.value for each in english.results]
    assert [each.name for each in german.results] == [each.name for each in english.results]


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("1,5 mg", "1,5 mg"),
        ("1.5 mg", "1,5 mg"),
        ("0,125 mg", "0,125 mg"),
        ("0.125 mg", "0,125 mg"),
        ("1000 mg", "1000 mg"),
        ("1,0000 mg", "1 mg"),
        ("12,25 mg", "12,25 mg"),
    ],
)
def test_comma_and_point_are_read_where_there_is_one_way(typed: str, meant: str) -> None:
    with speaking("de"):
        found = work("dose", amount=typed, volume="0,1 mL")
    assert {each.name: each.value for each in found.given}["amount"] == meant


@pytest.mark.parametrize(
    "typed", ["1.000 mg", "1,000 mg", "12.500 mg", "1.000,5 mg", "1,000.5 mg", "1, 5 mg", "1 ,5 mg"]
)
def test_what_has_two_ways_is_refused(typed: str) -> None:
    with speaking("de"):
        assert "`amount`" in refusals("dose", amount=typed, volume="0,1 mL")


def test_a_comma_in_a_list_parts_decimals_only_where_blanks_part_numbers() -> None:
    with speaking("de"):
        found = work("list-risk", cases="", rate="", risks="1,9 0,7 5,9 %")
        assert found.given[0].value == "1,9 %; 0,7 %; 5,9 %"
        for typed in ("1,9 %", "20,21 %", "1,9, 0,7 %", "1.900 0,7 %"):
            assert "`risks`" in refusals("list-risk", cases="", rate="", risks=typed)


def test_english_refuses_every_comma_whatever_was_typed_in_german_before() -> None:
    of = calculation("dose")
    typed = {"amount": "1,5 mg", "volume": "0.1 mL"}
    with speaking("de"):
        worked(of, typed)
    with pytest.raises(RefusedError, match="comma"):
        worked(of, typed)


def test_numbers_are_those_of_the_locale() -> None:
    with speaking("de"):
        shown = work("srk-t").result("power"), work("srk-t").results[0].shown
    assert parse_decimal(shown[1].removesuffix(" D"), locale="de") == round(shown[0], 2)


def test_a_formula_with_decimal_commas_parts_its_values_by_semicolons() -> None:
    with speaking("de"):
        lines = [each for each in work("hoffer-q").lines if not isinstance(each, (Heading, Step))]
    length = next(each for each in lines if each.symbol == "L")
    assert length.formula == "min(max(AL; 18,5); 31)"
    assert length.numbers == "min(max(23,5; 18,5); 31)"


def test_every_calculation_is_told_anew_in_each_language() -> None:
    english = [each.title for each in calculations()]
    with speaking("de"):
        german = [each.title for each in calculations()]
    assert set(english).isdisjoint(german)
    assert [each.title for each in calculations()] == english
