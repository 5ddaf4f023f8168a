"""The example of the guide to rules: broken as it tells, and mended as it says."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from chamberwise.engine.meaning.state import Answered, Done
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.verdict import Holds, Verdict, Violated
from chamberwise.engine.reading.library import load_library
from chamberwise.tui.command.main import run

TOP = Path(__file__).parents[3]
GUIDE = (TOP / "protocols" / "RULES.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"```yaml\n(.*?)```", GUIDE, re.DOTALL)
EXAMPLE = next(block for block in BLOCKS if block.startswith("pathway:"))
NEW_END = next(block for block in BLOCKS if block.startswith("  call-for-advice:"))
STORY = re.findall(r"```text\n(.*?)```", GUIDE, re.DOTALL)[0]
ANSWER, EXIT = "cannot tell: renew-stitch", "after that: call-for-advice"


def library_with(folder: Path, text: str) -> Path:
    """Return a library of the shared words and this one pathway."""
    words = folder / "vocabulary"
    words.mkdir()
    for name in ("sources", "duties"):
        shared = (TOP / "protocols" / "vocabulary" / f"{name}.yaml").read_text(encoding="utf-8")
        (words / f"{name}.yaml").write_text(shared, encoding="utf-8")
    (folder / "loose-stitch.yaml").write_text(text, encoding="utf-8")
    return folder


def verdict(folder: Path, text: str) -> Verdict:
    library = load_library(library_with(folder, text)).library
    return prove(library, "loose-stitch").verdicts[0]


def test_the_example_breaks_by_the_shortest_walk(tmp_path: Path) -> None:
    found = verdict(tmp_path, EXAMPLE)
    assert isinstance(found, Violated)
    assert found.counterexample.moves == (Answered("cannot tell"), Done())
    assert found.counterexample.moment == 1


def test_with_the_answer_mended_a_longer_walk_still_breaks_it(tmp_path: Path) -> None:
    assert ANSWER in GUIDE
    mended = EXAMPLE.replace("cannot tell: pad-the-eye", ANSWER)
    found = verdict(tmp_path, mended)
    assert isinstance(found, Violated)
    assert len(found.counterexample.moves) == 6


def test_with_the_exit_mended_too_it_holds(tmp_path: Path) -> None:
    assert EXIT in GUIDE
    mended = EXAMPLE.replace("cannot tell: pad-the-eye", ANSWER)
    mended = mended.replace("after that: pad-the-eye", EXIT)
    found = verdict(tmp_path, mended.replace("\nrules:", f"\n{NEW_END}\nrules:"))
    assert isinstance(found, Holds)
    assert not found.is_vacuous


def test_the_story_is_the_one_that_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    library = library_with(tmp_path, EXAMPLE)
    file = library / "loose-stitch.yaml"
    asked = ["prove", str(file), "--rule", "no-pad-over-a-leak", "--library", str(library)]
    assert run(asked) == 1
    assert STORY in capsys.readouterr().out
