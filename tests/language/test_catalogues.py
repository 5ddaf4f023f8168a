"""Every catalogue says every text of the program, and fills in what the text fills in."""

from __future__ import annotations

import ast
from functools import cache
from gettext import GNUTranslations
from io import BytesIO
from string import Formatter

import pytest
from babel.messages.catalog import Message
from chamberwise.engine.language.languages import LANGUAGES

from tests.language.catalogues import OTHERS, ROOMS, TOP, compiled, extracted, path_of, read

SOURCES = sorted(path for room in ROOMS for path in (TOP / room).rglob("*.py"))


def forms(said: object) -> tuple[str, ...]:
    if isinstance(said, str):
        return (said,)
    assert isinstance(said, (tuple, list))
    return tuple(said)


def filled_in(text: str) -> set[str]:
    return {name for _, name, _, _ in Formatter().parse(text) if name is not None}


@cache
def texts() -> dict[tuple[object, str | None], Message]:
    return {(each.id, each.context): each for each in extracted() if each.id}


@pytest.mark.parametrize("code", OTHERS)
def test_every_text_is_said_and_no_other(code: str) -> None:
    kept = {(each.id, each.context): each for each in read(path_of(code, "po"), code) if each.id}
    marked = texts()
    assert [text for text in marked if text not in kept] == []
    assert [text for text in kept if text not in marked] == []
    unsaid = [key for key, each in kept.items() if not all(forms(each.string))]
    assert [*unsaid, *(each.id for each in kept.values() if each.fuzzy)] == []


@pytest.mark.parametrize("code", OTHERS)
def test_what_is_filled_in_stays(code: str) -> None:
    wrong = []
    for message in read(path_of(code, "po"), code):
        wanted = {name for text in forms(message.id) for name in filled_in(text)}
        said = {name for text in forms(message.string) for name in filled_in(text)}
        if message.id and wanted != said:
            wrong.append((message.id, message.string))
    assert wrong == []


@pytest.mark.parametrize("code", OTHERS)
def test_what_is_set_off_by_a_space_stays_set_off(code: str) -> None:
    """A comma may come before the space: German sets more clauses off than English does."""
    wrong = []
    for message in read(path_of(code, "po"), code):
        for form in forms(message.string) if message.id else ():
            if forms(message.id)[0][:1] == " " and not form.startswith((" ", ", ")):
                wrong.append(form)
    assert wrong == []


@pytest.mark.parametrize("code", OTHERS)
def test_what_is_read_was_made_of_what_is_kept(code: str) -> None:
    assert path_of(code, "mo").read_bytes() == compiled(code)


@pytest.mark.parametrize("code", OTHERS)
def test_gettext_itself_reads_it(code: str) -> None:
    spoken = GNUTranslations(BytesIO(path_of(code, "mo").read_bytes()))
    for message in read(path_of(code, "po"), code):
        if isinstance(message.id, str) and message.id and not message.context:
            assert spoken.gettext(message.id) == message.string


def test_nothing_else_is_called_as_the_telling_is() -> None:
    """A name bound twice in one function would be told before it is set."""
    wrong = []
    for path in SOURCES:
        tree = ast.parse(path.read_text(encoding="utf-8"))
        names = [node for node in ast.walk(tree) if isinstance(node, ast.Name) and node.id == "_"]
        tells = any(
            alias.asname == "_"
            for node in ast.walk(tree)
            if isinstance(node, ast.ImportFrom)
            for alias in node.names
        )
        if tells and any(isinstance(name.ctx, ast.Store) for name in names):
            wrong.append(str(path.relative_to(TOP)))
    assert wrong == []


def test_a_text_is_told_whole_before_it_is_filled_in() -> None:
    """A text that is already filled in stands in no catalogue."""
    wrong = []
    for path in SOURCES:
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if (
                isinstance(node, ast.Call)
                and isinstance(node.func, ast.Name)
                and node.func.id in ("_", "N_")
                and any(isinstance(each, ast.JoinedStr) for each in node.args)
            ):
                wrong.append(f"{path.relative_to(TOP)}:{node.lineno}")
    assert wrong == []


def test_every_language_but_english_has_a_catalogue() -> None:
    assert {code for code in LANGUAGES if path_of(code, "po").exists()} == set(OTHERS)
