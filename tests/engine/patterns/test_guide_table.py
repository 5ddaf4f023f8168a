"""The guide to rules: its table against the machines, its keys against the format, its example."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from chamberwise.engine.model.rule import Extent, Pattern
from chamberwise.engine.patterns.formula import holds
from chamberwise.engine.patterns.published import formula_of
from chamberwise.engine.reading.form_rules import HAPPENING, ROLES, RULE, SCOPE, TIMES

from tests.engine.patterns.every import accepts, machine
from tests.engine.patterns.parsing import formula_in
from tests.engine.patterns.test_variants import walk_in

GUIDE = (Path(__file__).parents[3] / "protocols" / "RULES.md").read_text(encoding="utf-8")
ROWS = [
    [cell.strip().replace("\\|", "|") for cell in re.split(r"(?<!\\)\|", line)[1:-1]]
    for line in GUIDE.splitlines()
    if line.startswith("|")
]
TABLE = [row for row in ROWS if len(row) == 7 and row[0] in {*Pattern}]
COLUMNS = ("published name", "scope", "what you write", "in plain English", "formula")


def kind(row: list[str]) -> tuple[Pattern, Extent, int]:
    pattern = Pattern(row[0])
    return pattern, Extent(row[1]), int(pattern is Pattern.BOUNDED_EXISTENCE)


every_row = pytest.mark.parametrize("row", TABLE, ids=lambda row: f"{row[0]}, {row[1]}")


def test_the_table_has_a_row_for_every_pattern_in_every_scope() -> None:
    scoped = list(Pattern)[:6]
    every = [(pattern, extent) for pattern in scoped for extent in Extent]
    every += [(pattern, Extent.GLOBALLY) for pattern in Pattern if pattern not in scoped]
    assert sorted(kind(row)[:2] for row in TABLE) == sorted(every)
    assert any(tuple(row[:5]) == COLUMNS for row in ROWS)


@every_row
def test_the_formula_is_the_one_that_is_proved(row: list[str]) -> None:
    assert formula_in(row[4].strip("`")) == formula_of(*kind(row))


@every_row
def test_one_walk_keeps_it_and_the_other_breaks_it(row: list[str]) -> None:
    kept, broken = (walk_in(cell.strip("`")) for cell in row[5:])
    watched = machine(kind(row))

    def seen(walk: tuple[frozenset[str], ...]) -> tuple[frozenset[str], ...]:
        return tuple(moment & {*watched.atoms} for moment in walk)

    assert accepts(watched, seen(kept))
    assert not accepts(watched, seen(broken))
    assert holds(formula_of(*kind(row)), kept)
    assert not holds(formula_of(*kind(row)), broken)


@every_row
def test_what_is_written_names_the_pattern_its_roles_and_its_scope(row: list[str]) -> None:
    pattern, extent, _ = kind(row)
    roles = [f"{role}: " for role in ROLES[pattern] if role]
    roles += [f"{TIMES}: 1"] if pattern is Pattern.BOUNDED_EXISTENCE else []
    assert row[2].startswith(f"`{pattern}: {{")
    assert [role for role in roles if role not in row[2]] == []
    keys = {
        Extent.GLOBALLY: (),
        Extent.BEFORE: ("before: R",),
        Extent.AFTER: ("after: Q",),
        Extent.BETWEEN: ("between: Q", "and: R"),
        Extent.AFTER_UNTIL: ("after each: Q", "until: R"),
    }[extent]
    scope = row[2].partition("`scope: ")[2]
    assert bool(scope) is bool(keys)
    assert [key for key in keys if key not in scope] == []


def test_every_key_of_a_rule_stands_in_the_guide() -> None:
    keys = {*HAPPENING.keys, *SCOPE.keys, *(key for key in RULE.keys if key not in {*Pattern})}
    assert sorted(key for key in keys if f"`{key}`" not in GUIDE) == []
