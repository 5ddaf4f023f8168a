"""The editors' schema and the reader take the same documents."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from random import Random

import pytest
from chamberwise.engine.diagnostics.problem import Problem, pointer_text
from chamberwise.engine.reading import codes
from chamberwise.engine.reading.form_local import LOCAL_SHEET
from chamberwise.engine.reading.form_pathway import PATHWAY
from chamberwise.engine.reading.form_reviewed import REVIEWED
from chamberwise.engine.reading.form_rules import RULE
from chamberwise.engine.reading.form_vocabulary import VOCABULARY
from chamberwise.engine.reading.json_schema import schema
from chamberwise.engine.reading.read import read
from chamberwise.engine.reading.shapes import Record
from chamberwise.engine.reading.tree import Node, Scalar, parse
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator, FormatChecker

from tests.engine.reading.core_schema import as_core, as_strings, core_value
from tests.engine.reading.documents import damaged, document, tree_of

ROOT = Path(__file__).parents[3]
SHIPPED = sorted((ROOT / "protocols").glob("**/*.yaml"))
SHAPES = {
    "pathway": PATHWAY,
    "vocabulary": VOCABULARY,
    "mutants": REVIEWED,
    "rule": RULE,
    "local-sheet": LOCAL_SHEET,
}
seeds = st.integers(0, 2**32 - 1).map(Random)
faults = st.integers(0, 3)


@cache
def _validator(name: str) -> Draft202012Validator:
    made = schema(SHAPES[name], name)
    Draft202012Validator.check_schema(made)
    return Draft202012Validator(made, format_checker=FormatChecker())


def _problems(root: Node, shape: Record) -> list[Problem]:
    tree = tree_of(root)
    read(tree, shape)
    return tree.problems


def _differently_spelled(problem: Problem, root: Node) -> bool:
    """Whether only the spelling of a number is wrong, which an editor does not pass on."""
    places = {pointer_text(("edition",)): (0, 9999.9999999), "at most": (1, 99)}
    key = problem.pointer[-1] if problem.pointer else ""
    if problem.code != codes.WRONG_VALUE.slug or key not in places:
        return False
    node: Node = root
    for part in problem.pointer:
        node = node.items[part] if isinstance(part, int) else node.entries[part].value  # type: ignore[union-attr]
    value = core_value(node) if isinstance(node, Scalar) else None
    least, most = places[str(key)]
    return isinstance(value, int | float) and not isinstance(value, bool) and least <= value <= most


def _assert_agreement(root: Node, name: str) -> None:
    problems, validator = _problems(root, SHAPES[name]), _validator(name)
    told = [f"{pointer_text(each.pointer)}: {each.message}" for each in problems]
    assert (not told) is validator.is_valid(as_strings(root)), f"all strings: {told}"
    left = [each.message for each in problems if not _differently_spelled(each, root)]
    assert (not left) is validator.is_valid(as_core(root)), f"typed: {left}"


@pytest.mark.parametrize("name", SHAPES)
@settings(deadline=None)
@given(random=seeds)
def test_a_document_of_the_right_form_is_taken_by_both(name: str, random: Random) -> None:
    root = document(SHAPES[name], random)
    assert _problems(root, SHAPES[name]) == []
    _assert_agreement(root, name)


@pytest.mark.parametrize("name", SHAPES)
@settings(deadline=None)
@given(random=seeds, number=faults)
def test_they_agree_on_made_documents(name: str, random: Random, number: int) -> None:
    _assert_agreement(damaged(document(SHAPES[name], random), random, number), name)


@cache
def _shipped(path: Path) -> Node:
    root = parse(path.read_text(encoding="utf-8"), path.name).root
    assert root
    return root


@settings(deadline=None, max_examples=40)
@given(random=seeds, path=st.sampled_from(SHIPPED), number=faults)
def test_they_agree_on_shipped_files(random: Random, path: Path, number: int) -> None:
    name = {"demonstration": "local-sheet"}.get(path.parent.name, path.parent.name)
    name = name if name in SHAPES else "pathway"
    _assert_agreement(damaged(_shipped(path), random, number), name)
