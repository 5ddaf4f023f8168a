from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest
from chamberwise.engine.meaning.state import Answered, Done
from chamberwise.engine.proof.replay_key import key_of
from chamberwise.engine.reading.library import load_library

from tests.tui.stage import LIBRARY
from tests.tui.terminal.playing import COMMAND, environment

TO_THE_END = "# to the end\n3\ndone\ncalm\n\ndone\nnone\n"


def run(
    home: Path, *words: str, typed: str = "", **more: str
) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run(
        [*COMMAND, "walk", "--library", str(LIBRARY), *words],
        input=typed.encode(),
        capture_output=True,
        env=environment(home, **more),
        cwd=home,
        timeout=30,
        check=False,
    )


def test_a_pipe_gets_plain_lines_and_the_walk_is_kept(tmp_path: Path) -> None:
    done = run(tmp_path, "leaking-wound", typed="3\n")
    assert done.returncode == 0
    assert b"\x1b" not in done.stdout
    assert b"The walk is kept." in done.stdout
    again = run(tmp_path, "leaking-wound", "--resume")
    assert b"Going on with the walk begun on" in again.stdout
    assert b"DO  Hold still" in again.stdout


def test_answers_from_a_file_and_a_record(tmp_path: Path) -> None:
    (tmp_path / "answers.txt").write_text(TO_THE_END)
    words = ("leaking-wound", "--answers", "answers.txt", "--record", "walk.json")
    done = run(tmp_path, *words)
    assert done.returncode == 0, done.stderr
    record = json.loads((tmp_path / "walk.json").read_text())
    assert record["finished"]
    assert record["standing_on"] == "Wound closed, chamber deep"
    assert not (tmp_path / "walks").exists()


def test_answers_from_standard_input(tmp_path: Path) -> None:
    done = run(tmp_path, "leaking-wound", "--answers", "-", typed=TO_THE_END)
    assert done.returncode == 0
    assert b"END  Wound closed, chamber deep" in done.stdout


def test_an_answer_that_is_not_offered(tmp_path: Path) -> None:
    done = run(tmp_path, "leaking-wound", "--answers", "-", typed="3\nnope\n")
    assert done.returncode == 2
    assert done.stderr.startswith(b"answers:2: `nope` stands at an action")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("leaking-woud",), "Did you mean `leaking-wound`?"),
        (("gone.yaml",), "There is no file gone.yaml"),
        (("broken.yaml",), "cannot be walked until this is put right"),
        (("vocabulary.yaml",), "holds no pathway"),
        (("leaking-wound", "--record", "walk.pdf"), "A record is written as .txt or .json"),
        (("leaking-wound", "--answers", "none.txt"), "cannot be read: No such file"),
    ],
)
def test_what_cannot_be_walked_is_said_without_a_traceback(
    tmp_path: Path, words: tuple[str, ...], said: str
) -> None:
    (tmp_path / "broken.yaml").write_text("pathway: broken\nsteps: {a: {ask: b}}\n")
    (tmp_path / "vocabulary.yaml").write_text("vocabulary: Words\n")
    done = run(tmp_path, *words)
    assert done.returncode == 2
    assert said in done.stderr.decode()
    assert b"Traceback" not in done.stderr


def test_a_record_that_cannot_be_written(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    done = run(tmp_path, "leaking-wound", "--record", "file/walk.txt", typed="3\n")
    assert done.returncode == 2
    assert b"file is a file, not a folder" in done.stderr
    assert b"Traceback" not in done.stderr


def test_a_record_writes_over_no_file(tmp_path: Path) -> None:
    (tmp_path / "walk.txt").write_text("kept")
    done = run(tmp_path, "leaking-wound", "--record", "walk.txt", typed="3\n")
    assert done.returncode == 2
    assert b"There is already a file walk.txt" in done.stderr
    assert done.stdout == b""
    assert (tmp_path / "walk.txt").read_text() == "kept"
    assert not (tmp_path / "walks").exists()


def test_a_record_saved_on_the_way_is_brought_up_to_date_at_the_end(tmp_path: Path) -> None:
    done = run(tmp_path, "leaking-wound", "--record", "walk.txt", typed="3\nc\n\n")
    assert done.returncode == 0
    assert "Done: Hold still" in (tmp_path / "walk.txt").read_text()
    assert not (tmp_path / "walk-2.txt").exists()


def test_a_walk_with_nothing_done_leaves_no_record(tmp_path: Path) -> None:
    done = run(tmp_path, "leaking-wound", "--record", "walk.txt", typed="c\nq\n")
    assert done.returncode == 0
    assert b"Nothing was done, so no record is written." in done.stderr
    assert b"Nothing was done, so there is nothing to keep." in done.stdout
    assert list(tmp_path.iterdir()) == []


def test_a_changed_pathway_is_not_gone_on_with_but_its_record_can_be_kept(tmp_path: Path) -> None:
    library = tmp_path / "library"
    for path in [*LIBRARY.glob("*.yaml"), *LIBRARY.glob("vocabulary/*.yaml")]:
        copy = library / path.relative_to(LIBRARY)
        copy.parent.mkdir(parents=True, exist_ok=True)
        copy.write_text(path.read_text(encoding="utf-8").replace("Keep every", "Hold every"))
    run(tmp_path, "leaking-wound", typed="3\n")
    done = run(
        tmp_path, "leaking-wound", "--resume", "--record", "old.txt", "--library", str(library)
    )
    assert done.returncode == 2
    assert b"its pathway has changed" in done.stderr
    assert b"Its record is saved as old.txt." in done.stderr
    assert "Answered: fast" in (tmp_path / "old.txt").read_text()


def test_ascii_where_nothing_else_can_be_said(tmp_path: Path) -> None:
    done = run(tmp_path, "leaking-wound", typed="3\n", PYTHONIOENCODING="ascii")
    assert done.returncode == 0
    done.stdout.decode("ascii")
    assert b'says aloud: "The suture is ready."' in done.stdout


def test_bytes_that_are_no_text_move_nothing(tmp_path: Path) -> None:
    done = subprocess.run(
        [*COMMAND, "walk", "leaking-wound", "--library", str(LIBRARY)],
        input=b"\xff\xfe\n\x00\n",
        capture_output=True,
        env=environment(tmp_path),
        timeout=30,
        check=False,
    )
    assert done.returncode == 0
    assert done.stdout.count(b"Not understood.") == 2


RULED = Path(__file__).parents[2] / "exports" / "proof" / "library"


def test_a_replay_piped_with_nothing_to_read_tells_the_whole_walk(tmp_path: Path) -> None:
    key = key_of(load_library(RULED), "leaking-wound", (Answered("fast"), Done()))
    done = run(tmp_path, "--library", str(RULED), "--replay", key)
    assert (done.returncode, done.stderr) == (0, b"")
    assert b"The replay ends here." in done.stdout
    assert b"A replay is not kept." in done.stdout
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--replay", "AAAA-AAAA-A"), "This key is mistyped"),
        (("--replay", "8V2B-AX59"), "of a pathway that is not here"),
        (
            ("leaking-wound", "--replay", "8V2B-AX59", "--resume"),
            "Leave --resume and --answers out",
        ),
        ((), "Name a pathway to walk"),
    ],
)
def test_a_replay_that_cannot_be_says_why(
    words: tuple[str, ...], said: str, tmp_path: Path
) -> None:
    done = run(tmp_path, *words)
    assert (done.returncode, done.stdout) == (2, b"")
    assert said in done.stderr.decode()


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")
@pytest.mark.parametrize("words", [["list"], ["work"], ["explain"]])
@pytest.mark.parametrize("out", ["/dev/full", ""])
def test_an_output_that_takes_nothing_is_told_without_a_traceback(
    words: list[str], out: str
) -> None:
    where = f"> {out}" if out else ">&-"
    line = f"{sys.executable} -m chamberwise.tui.command.main {' '.join(words)} {where}"
    done = subprocess.run(["sh", "-c", line], capture_output=True, check=False)
    assert done.returncode == 2
    assert b"cannot be written out" in done.stderr
    assert b"Traceback" not in done.stderr
