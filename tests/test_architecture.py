"""What the source must look like: small files, one meaning, thin edges, a quick start."""

from __future__ import annotations

import ast
import subprocess
import sys
import tomllib
from collections.abc import Iterable, Iterator
from configparser import ConfigParser
from pathlib import Path

import pytest
from chamberwise.engine.version import VERSION

TOP = Path(__file__).resolve().parent.parent
ROOMS = ("engine", "exports", "tui", "protocols")
LONGEST = 300
SEES_THE_ENGINE = {
    "duties",
    "extract",
    "extract_ways",
    "headlines",
    "lying",
    "machine",
    "main_line",
    "make",
    "minutes",
    "opening",
}
"""Files in the room of a sheet that take its content out, and the one that carries out an order."""
SOURCES = sorted(path for room in (*ROOMS, "tests") for path in (TOP / room).rglob("*.py"))
PYPROJECT = tomllib.loads((TOP / "pyproject.toml").read_text(encoding="utf-8"))


def in_room(room: str) -> Iterator[Path]:
    yield from sorted((TOP / room).rglob("*.py"))


def imported(path: Path) -> set[str]:
    """Return every module a file imports, wherever in it, but for types alone."""
    tree = parsed(path)
    for node in ast.walk(tree):
        if isinstance(node, ast.If) and ast.unparse(node.test) == "TYPE_CHECKING":
            node.body = []
    names: set[str] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            names |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            names |= {node.module, *(f"{node.module}.{alias.name}" for alias in node.names)}
    return names


def top_names(path: Path) -> set[str]:
    return {name.partition(".")[0] for name in imported(path)}


def shown(paths: Iterable[Path]) -> list[str]:
    return sorted(str(path.relative_to(TOP)) for path in paths)


def parsed(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


def test_no_file_is_longer_than_a_sitting() -> None:
    lengths = {path: len(path.read_text(encoding="utf-8").splitlines()) for path in SOURCES}
    assert shown(path for path, length in lengths.items() if length > LONGEST) == []


def test_every_folder_of_python_is_a_package() -> None:
    folders = {path.parent for path in SOURCES}
    assert shown(each for each in folders if not (each / "__init__.py").exists()) == []


def test_no_file_is_named_for_anything_and_nothing() -> None:
    names = {"utils", "util", "helpers", "helper", "common", "misc", "data"}
    assert shown(path for path in SOURCES if path.stem in names) == []


def test_imports_are_absolute_and_annotations_are_not_evaluated() -> None:
    relative, evaluated = [], []
    for path in SOURCES:
        nodes = list(ast.walk(parsed(path)))
        imports = [node for node in nodes if isinstance(node, ast.ImportFrom)]
        if any(node.level for node in imports):
            relative.append(path)
        defines = any(isinstance(node, ast.FunctionDef | ast.ClassDef) for node in nodes)
        if defines and not any(node.module == "__future__" for node in imports):
            evaluated.append(path)
    assert (shown(relative), shown(evaluated)) == ([], [])


def test_only_the_meaning_builds_states() -> None:
    home = TOP / "engine" / "meaning"
    for room in ROOMS:
        for path in in_room(room):
            if path.parent != home and "chamberwise.engine.meaning.state.State" in imported(path):
                calls = [node for node in ast.walk(parsed(path)) if isinstance(node, ast.Call)]
                assert not any(ast.unparse(call.func) == "State" for call in calls), path
            assert path.parent == home or "meaning.state import *" not in path.read_text("utf-8")


def test_states_are_changed_in_the_meaning_alone() -> None:
    outside = [
        path
        for room in ROOMS
        for path in in_room(room)
        if path.parent != TOP / "engine" / "meaning"
        for node in ast.walk(parsed(path))
        if isinstance(node, ast.Call)
        and ast.unparse(node.func) == "replace"
        and node.args
        and ast.unparse(node.args[0]).endswith("state")
    ]
    assert outside == []


def test_the_engine_knows_no_terminal_no_template_and_no_typing() -> None:
    strangers = {"textual", "rich", "jinja2", "argparse", "curses"}
    assert {path: top_names(path) & strangers for path in in_room("engine")} == {
        path: set() for path in in_room("engine")
    }


@pytest.mark.parametrize(
    ("room", "strangers"),
    [
        ("engine", ("chamberwise.exports", "chamberwise.tui")),
        ("exports", ("chamberwise.tui",)),
        ("protocols", ("chamberwise.engine", "chamberwise.exports", "chamberwise.tui")),
    ],
)
def test_arrows_point_one_way(room: str, strangers: tuple[str, ...]) -> None:
    for path in in_room(room):
        assert [name for name in imported(path) if name.startswith(strangers)] == []


def test_no_source_imports_the_tests() -> None:
    for room in ROOMS:
        for path in in_room(room):
            assert "tests" not in top_names(path)


def loaded_by(program: str) -> set[str]:
    """Return the modules that a program of its own has loaded when it ends."""
    command = [sys.executable, "-c", f"{program}\nimport sys\nprint(*sys.modules, sep='\\n')"]
    made = subprocess.run(command, cwd=TOP, capture_output=True, text=True, check=True)
    return set(made.stdout.splitlines())


def test_showing_the_version_loads_next_to_nothing() -> None:
    run = "from chamberwise.tui.command.main import run\nassert run(['--version']) == 0"
    heavy = {"argparse", "yaml", "networkx", "textual", "jinja2", "numpy", "importlib.metadata"}
    printing = {"typst", "segno", "pypdf", "pypdfium2", "graphviz", "wasmtime", "coloraide"}
    counting = {"pint", "holidays", "icalendar"}
    assert loaded_by(run) & (heavy | printing | counting) == set()


def test_a_calculation_in_its_own_units_loads_no_library_of_units() -> None:
    program = (
        "from chamberwise.engine.working.registry import calculations\n"
        "from chamberwise.engine.working.run import worked\n"
        "srk_t = next(each for each in calculations() if each.name == 'srk-t')\n"
        "worked(srk_t, {'AL': '23.5', 'K': '43.5 D', 'A': '118.7', 'target': '0'})\n"
    )
    assert loaded_by(program) & {"pint", "holidays", "icalendar", "yaml", "argparse"} == set()


@pytest.mark.parametrize("words", [["list"], ["stamp"], ["print", "no-such-pathway"]])
def test_a_command_that_prints_nothing_loads_nothing_to_print_with(words: list[str]) -> None:
    run = f"from chamberwise.tui.command.main import run\nassert run({words!r}) in (0, 1, 2)"
    assert loaded_by(run) & {"typst", "segno", "pypdf", "pypdfium2", "networkx"} == set()


def test_checking_for_a_walk_loads_no_graph_library() -> None:
    program = (
        "from datetime import date\n"
        "from pathlib import Path\n"
        "from chamberwise.engine.checks.run import check_for_walk\n"
        "from chamberwise.engine.reading.library import load_library\n"
        "loaded = load_library(Path('tests/library'))\n"
        "for name in loaded.library.pathways:\n"
        "    assert check_for_walk(loaded, name, date(2026, 11, 25)) == []\n"
    )
    assert loaded_by(program) & {"networkx", "numpy", "jinja2", "textual", "argparse"} == set()


def test_every_file_of_a_sheet_is_placing_or_takes_content_from_the_engine() -> None:
    """Import contracts name what must not see the engine; a new file has to be named there too."""
    contracts = ConfigParser()
    contracts.read(TOP / ".importlinter", encoding="utf-8")
    placing = set(contracts["importlinter:contract:placing"]["source_modules"].split())
    rooms = [path.parent for path in in_room("exports") if path.name == "make.py"]
    files = {
        f"chamberwise.exports.{room.name}.{path.stem}": path.stem
        for room in (TOP / "exports" / "control", *rooms)
        for path in room.glob("[!_]*.py")
    }
    unnamed = {stem for module, stem in files.items() if module not in placing}
    assert unnamed == SEES_THE_ENGINE
    for each in (each for each in placing if each.count(".") == 3):
        assert TOP.joinpath(*each.split(".")[1:]).with_suffix(".py").exists(), each


def packages_there_are() -> list[str]:
    folders = {path.parent for room in ROOMS for path in in_room(room)}
    return sorted("chamberwise." + ".".join(each.relative_to(TOP).parts) for each in folders)


def test_every_package_is_installed() -> None:
    listed = PYPROJECT["tool"]["setuptools"]["packages"]
    if len(listed) == len(ROOMS):
        pytest.skip("the packages are not listed yet")
    assert sorted(listed) == packages_there_are()


def test_the_version_is_told_once() -> None:
    assert PYPROJECT["project"]["version"] == VERSION
