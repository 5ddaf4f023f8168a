"""Whatever commands, line mode and screens say of themselves, they say in the language spoken."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest
from chamberwise.engine.drill.entries import Mode
from chamberwise.exports.record.standing import marks
from chamberwise.tui.command.main import COMMANDS, _parser
from chamberwise.tui.examining import Examined
from chamberwise.tui.line.commands import COMMANDS as LINE_COMMANDS
from chamberwise.tui.line.drill_script import HandSetClock
from chamberwise.tui.present.checker import checker_page, checker_rows, in_short
from chamberwise.tui.present.draft import Stage, state_of
from chamberwise.tui.present.drill_pages import opening
from chamberwise.tui.present.parts import text_lines
from chamberwise.tui.rehearsal import valid_parts
from chamberwise.tui.rehearsing import rehearse, scenario_of

from tests.engine.drill.stage import ON, RUPTURE, shipped
from tests.tui.line.talking import transcript
from tests.tui.screens.playing import playing, press, seen
from tests.tui.screens.test_drill import drilling as drilling_alone
from tests.tui.screens.test_team_drill import drilling as drilling_as_team
from tests.tui.signs import spoken_in_signs, untold
from tests.tui.stage import LIBRARY, TODAY, loaded

ROOM = Path(__file__).resolve().parents[2] / "tui"
FILES = frozenset(path.read_text(encoding="utf-8") for path in LIBRARY.rglob("*.yaml"))
PARSED = frozenset({"chamberwise", "text json csv pdf svg png", "CSV PDF", " ".join(COMMANDS)})
"""Names on help pages that are typed or end a file."""
ELSEWHERE = frozenset(
    {
        "Cannot tell",
        "Goes on by what is known",
        "Over to",
        "Decided",
        "Not decided by what is known, so the safe way: unknown",
        "no source",
        "read at its address",
    }
)
"""What steps and records are called by rooms that hold their own tests."""


def help_page(command: str, capsys: pytest.CaptureFixture[str]) -> str:
    with spoken_in_signs(), pytest.raises(SystemExit):
        _parser().parse_args([command, "--help"])
    return capsys.readouterr().out


@pytest.mark.parametrize("command", COMMANDS)
def test_help_pages(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    from chamberwise.tui.command.list import TABLES
    from chamberwise.tui.command.print import WHAT

    page = help_page(command, capsys)
    names = {word for word in untold(page) if word.startswith("--")}
    assert (
        untold(
            page, frozenset({*PARSED, *names, *WHAT, *TABLES, "portrait landscape rehearse run"})
        )
        == []
    )


def test_what_was_mistyped(capsys: pytest.CaptureFixture[str]) -> None:
    for typed in (["print"], ["walk", "--replay"], ["prove", "--every", "0"], ["list", "more"]):
        with spoken_in_signs(), pytest.raises(SystemExit):
            _parser().parse_args(typed)
        said = capsys.readouterr().err.splitlines()[-1]
        assert untold(said, frozenset({"chamberwise", *typed})) == []


def of_other_rooms() -> frozenset[str]:
    """Words of the files, and names of states that are told where the record is made."""
    about = loaded().library.pathways.values()
    told = (mark for pathway in about for mark in marks(pathway, TODAY))
    return FILES | ELSEWHERE | {str(path) for path in LIBRARY.rglob("*.yaml")} | {*told}


def test_line_mode() -> None:
    with spoken_in_signs():
        said = transcript("?", "x", "", "1", "u", "y", "k", "m", "w", "n", "", "q")
    assert untold(said, of_other_rooms()) == []


KEYS = {
    "why": ("w",),
    "board": ("k",),
    "map": ("m",),
    "phase": ("m", "right"),
    "help": ("question_mark",),
    "note": ("n",),
    "first": ("u",),
    "no key": ("x",),
    "action": ("3",),
    "redone": ("3", "u", "y"),
    "end": ("3", "enter", "1", "enter", "1"),
}


@pytest.mark.parametrize("keys", KEYS.values(), ids=KEYS)
async def test_walk_screens(keys: tuple[str, ...]) -> None:
    with spoken_in_signs():
        async with playing((100, 40)) as pilot:
            await press(pilot, *keys)
            shown = seen(pilot)
    assert untold(shown, of_other_rooms()) == []


@pytest.mark.parametrize("keys", ["?", "o", "w"])
async def test_screens_of_the_library(keys: str) -> None:
    with spoken_in_signs():
        async with playing((100, 40), None) as pilot:
            await press(pilot, *("question_mark" if key == "?" else key for key in keys))
            shown = seen(pilot)
    assert untold(shown, of_other_rooms()) == []


def test_the_checker_and_the_draft() -> None:
    found = Examined(())
    with spoken_in_signs():
        rows = checker_rows(found, {})
        parts = [*checker_page(rows, 0, None), *(part for row in rows for part in row.told)]
        said = [*text_lines(parts, 78), *(state_of(found, each) for each in Stage), in_short(found)]
    assert untold("\n".join(said)) == []


async def test_the_keys_of_drills() -> None:
    typed = frozenset({"back again end", "/sure /likely /guess"})
    with spoken_in_signs():
        for drilling in (drilling_alone, drilling_as_team):
            async with drilling(size=(100, 40)) as (pilot, _clock, _rehearsal):
                shown = await press(pilot, "f3")
                assert untold(shown, typed) == []
                assert "/sure" in shown


def test_the_head_of_a_drill() -> None:
    loaded, drills = shipped()
    scenario = scenario_of(loaded, drills, RUPTURE, 7, "fifth-of-six")
    rehearsal = rehearse(loaded, drills, scenario, Mode.RUN, ON, HandSetClock(), None)
    with spoken_in_signs():
        said = "\n".join(text_lines(opening(rehearsal.drill, Mode.RUN), 78))
    files = frozenset({*scenario.brief, scenario.so_far, scenario.title})
    assert untold(said, files) == []


def test_no_text_is_told_inside_another() -> None:
    """What is told within an f-string, the catalogues do not see before Python 3.12."""
    wrong = [
        f"{path.name}:{each.lineno}"
        for path in ROOM.rglob("*.py")
        for each in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(each, ast.JoinedStr)
        for call in ast.walk(each)
        if isinstance(call, ast.Call)
        and isinstance(call.func, ast.Name)
        and call.func.id in ("_", "ngettext", "pgettext")
        and isinstance(call.args[0], ast.Constant)
    ]
    assert wrong == []


def test_what_is_typed_stays_as_it_is_typed() -> None:
    with spoken_in_signs():
        said = "\n".join(text_lines(valid_parts(), 78))
        letters = transcript("?", "q")
    assert [word for word in ("back", "again", "end", "q") if f"  {word} " not in said] == []
    assert [each.letter for each in LINE_COMMANDS if f"  {each.letter} " not in letters] == [
        "Enter"
    ]
