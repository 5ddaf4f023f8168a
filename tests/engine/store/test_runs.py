"""The store of runs: nothing that was written is lost, whatever happens to the writer."""

from __future__ import annotations

import sqlite3
import stat
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from chamberwise.engine.drill.entries import Did, Ended, Ending, NotUnderstood
from chamberwise.engine.drill.measures.gates import Result
from chamberwise.engine.drill.measures.measured import measure
from chamberwise.engine.drill.measures.proportion import Share
from chamberwise.engine.drill.remembering.remembered import Remembered, remember
from chamberwise.engine.drill.spacing.grading import Grade
from chamberwise.engine.model.drill import CriticalAct
from chamberwise.engine.model.library import Place
from chamberwise.engine.store.runs import Runs
from chamberwise.engine.store.runs_file import RunsError, is_on_a_share
from chamberwise.engine.store.runs_or_none import runs_or_none

from tests.engine.drill.measures.test_measures import run, small
from tests.engine.store.journals import journal_of
from tests.support.thorough import THOROUGH

TOP = Path(__file__).parents[3]
NOW = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "own" / "drills.db"


@pytest.fixture
def runs(path: Path) -> Iterator[Runs]:
    store = Runs(path)
    yield store
    store.close()


def numbers(path: Path) -> list[int]:
    """Return the numbers of all runs kept."""
    database = sqlite3.connect(path)
    found = [number for (number,) in database.execute("SELECT run FROM runs ORDER BY run")]
    database.close()
    return found


def remembered(script: str = "3 stop, 9 fill", on: datetime = NOW) -> Remembered:
    critical = (CriticalAct("stop", 5, 10), CriticalAct("fill", 10, 20))
    return remember(measure(small(), run(script, critical=critical, on=on)), "nucleus")


def test_a_journal_comes_back_as_it_was_written(runs: Runs, path: Path) -> None:
    given = run("3 stop, 9 fill sure, 12 vitreous?", recognised=2)
    number = runs.keep(given.journal, remembered())
    assert journal_of(path, number) == given.journal
    Runs(path).close()
    assert journal_of(path, number) == given.journal


def test_what_cannot_be_kept_whole_is_not_kept_at_all(runs: Runs, path: Path) -> None:
    given, kept = run("3 stop, 9 fill"), remembered()
    twice = replace(kept, acts=(*kept.acts, replace(kept.acts[0], act=None)))  # type: ignore[arg-type]
    with pytest.raises(RunsError, match="cannot be written"):
        runs.keep(given.journal, twice)
    assert numbers(path) == []
    database = sqlite3.connect(path)
    assert database.execute("SELECT count(*) FROM events").fetchone() == (0,)
    database.close()


def test_what_is_kept_of_a_run_comes_back(runs: Runs) -> None:
    kept = remembered()
    runs.keep(run("stop").journal, kept)
    assert runs.latest("one", 9) == (replace(kept, met=()),)
    assert runs.results("one") == (kept.result,)
    assert runs.by_month("one") == (("2026-11", kept.result, 1),)
    assert runs.pathways() == ("one",)


def test_what_was_met_adds_up_over_runs(runs: Runs) -> None:
    for script in ("3 stop, 9 fill", "stop, call, fill, vitreous?", "stop, fill, vitreous?"):
        runs.keep(run("stop").journal, remembered(script))
    assert runs.met("one") == {(Place("one", "look"), "present")}
    assert runs.met("two") == frozenset()


def test_how_often_each_act_went_well_is_told_by_stage(runs: Runs) -> None:
    for script in ("3 stop, 9 fill", "3 stop", "3 stop, 9 fill told"):
        runs.keep(run("stop").journal, remembered(script))
    assert runs.tallies("one") == {
        ("fill", "nucleus"): Share(1, 3),
        ("stop", "nucleus"): Share(3, 3),
    }


def test_critical_acts_are_due_by_how_they_went(runs: Runs) -> None:
    runs.keep(run("stop").journal, remembered("3 stop"))
    by_act = {each.act: each for each in runs.memories("one")}
    assert by_act["fill"].due - NOW == timedelta(days=1)
    assert {each.context for each in by_act.values()} == {"nucleus"}
    assert [each.grade for each in remembered("3 stop").acts] == [Grade.GOOD, Grade.AGAIN]


def test_a_rehearsal_is_kept_and_counts_for_nothing(runs: Runs) -> None:
    runs.keep(run("stop").journal, replace(remembered(), counts=False))
    assert runs.results("one") == ()
    assert runs.memories("one") == ()
    assert len(runs.latest("one", 9)) == 1


def test_words_that_nothing_was_found_for_are_counted(runs: Runs) -> None:
    words = ["Pull out", "pull out ", "say a prayer"]
    heard = [NotUnderstood(place, typed) for place, typed in enumerate(words, start=1)]
    act = Did(9, "stop", "surgeon", typed='{"is":"NotUnderstood"')
    runs.keep([run("stop").began, *heard, act], remembered())
    assert runs.not_understood() == (("pull out", 2), ("say a prayer", 1))


def test_the_store_is_its_owners_alone(runs: Runs, path: Path) -> None:
    del runs
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert stat.S_IMODE(path.parent.stat().st_mode) == 0o700


def test_a_store_of_a_newer_program_is_left_alone(path: Path, runs: Runs) -> None:
    runs.close()
    database = sqlite3.connect(path)
    database.execute("PRAGMA user_version = 99")
    database.close()
    before = path.read_bytes()
    for to_read in (False, True):
        with pytest.raises(RunsError, match="newer chamberwise"):
            Runs(path, to_read=to_read)
    assert path.read_bytes() == before


def test_what_is_no_store_is_left_alone(path: Path) -> None:
    path.parent.mkdir()
    path.write_text("The runs of drills are elsewhere.\n" * 40)
    with pytest.raises(RunsError, match="cannot be used"):
        Runs(path)
    assert path.read_text().startswith("The runs of drills are elsewhere.")


def test_without_a_place_to_write_it_is_said_once_and_drills_go_on(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    said: list[str] = []
    assert runs_or_none(tmp_path / "file" / "drills.db", said.append) is None
    assert len(said) == 1
    assert "not kept" in said[0]


def test_a_store_can_be_read_where_it_cannot_be_written(path: Path, runs: Runs) -> None:
    runs.keep(run("stop").journal, remembered())
    runs.close()
    path.chmod(0o400)
    path.parent.chmod(0o500)
    try:
        reading = Runs(path, to_read=True)
        assert len(reading.results("one")) == 1
        with pytest.raises(RunsError):
            reading.keep(run("stop").journal, remembered())
        reading.close()
    finally:
        path.parent.chmod(0o700)


def test_a_network_share_is_told_by_the_longest_mount(tmp_path: Path) -> None:
    mounts = tmp_path / "mounts"
    mounts.write_text(f"/dev/sda / ext4 rw 0 0\nserver:/x {tmp_path} nfs4 rw 0 0\n")
    assert is_on_a_share(tmp_path / "drills.db", mounts)
    assert not is_on_a_share(Path("/drills.db"), mounts)
    assert is_on_a_share(Path("//server/share/drills.db"), mounts)
    assert not is_on_a_share(Path("/drills.db"), tmp_path / "none")


KEEPING = """
import os, random, signal, sys, time
from pathlib import Path
from chamberwise.engine.drill.entries import Did
from chamberwise.engine.store.runs import Runs
from tests.engine.drill.measures.test_measures import run
from tests.engine.store.journals import journal_of
from tests.engine.store.test_runs import numbers, remembered
path, times, who = Path(sys.argv[1]), int(sys.argv[2]), sys.argv[3]
began, kept = run("stop").began, remembered()
"""
WRITER = f"""{KEEPING}
runs = Runs(path)
for turn in range(times):
    journal = [began, *(Did(place, f"{{turn}}", who) for place in range(1, 9))]
    print(runs.keep(journal, kept), flush=True)
"""


def writer(path: Path, runs: int, who: str) -> subprocess.Popen[str]:
    command = [sys.executable, "-c", WRITER, str(path), str(runs), who]
    return subprocess.Popen(command, cwd=TOP, stdout=subprocess.PIPE, text=True)


def test_two_writers_lose_nothing(path: Path) -> None:
    many = 1000 if THOROUGH else 50
    both = {who: writer(path, many, who) for who in ("surgeon", "assistant")}
    said = {who: process.communicate()[0].split() for who, process in both.items()}
    assert [process.returncode for process in both.values()] == [0, 0]
    runs = Runs(path)
    assert len(numbers(path)) == 2 * many
    for who, told in said.items():
        journals = [journal_of(path, int(number))[1:] for number in told]
        assert journals == [
            tuple(Did(place, f"{turn}", who) for place in range(1, 9)) for turn in range(many)
        ]
    assert len(runs.results("one")) == 2 * many
    runs.close()


KILLED = f"""{KEEPING}
dice, lost = random.Random(20261125), 0
Runs(path).close()
for _ in range(times):
    hears, says = os.pipe()
    child = os.fork()
    if child == 0:
        runs = Runs(path)
        while True:
            number = runs.keep([began, *(Did(place, "stop", who) for place in range(1, 9))], kept)
            os.write(says, b"%d\\n" % number)
    os.close(says)
    said = os.read(hears, 64)
    time.sleep(dice.random() * 0.03)
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    while more := os.read(hears, 65536):
        said += more
    os.close(hears)
    runs = Runs(path)
    lost += sum(len(journal_of(path, int(number))) != 9 for number in said.split()[-20:])
    runs.close()
runs = Runs(path)
lost += sum(len(journal_of(path, number)) != 9 for number in numbers(path))
print(lost, len(numbers(path)) - len(runs.results("one")))
"""


def test_what_was_said_to_be_written_survives_a_kill(path: Path) -> None:
    """Killed at random moments: what was told is there, and nothing is there by half."""
    times = 1000 if THOROUGH else 12
    command = [sys.executable, "-c", KILLED, str(path), str(times), "surgeon"]
    done = subprocess.run(command, cwd=TOP, capture_output=True, text=True, check=True)
    assert done.stdout == "0 0\n"


def test_a_run_that_ended_says_so(runs: Runs, path: Path) -> None:
    given = run("stop", ending=Ending.TIME_OUT)
    number = runs.keep(given.journal, remembered())
    assert [each.how for each in journal_of(path, number) if isinstance(each, Ended)] == [
        Ending.TIME_OUT
    ]
    assert remembered().result in Result


def test_a_store_in_which_nothing_could_be_written_yet_holds_no_runs(path: Path) -> None:
    """What a full disk leaves: the file is made before its first table."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.touch()
    found = Runs(path, to_read=True)
    assert (found.pathways(), path.stat().st_size) == ((), 0)
    found.close()


def test_a_full_disk_is_told_as_one(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """SQLite says FULL as well where a file may grow no further."""
    script = "PRAGMA max_page_count = 1; CREATE TABLE too_much (words TEXT)"
    monkeypatch.setattr("chamberwise.engine.store.runs_tables.MIGRATIONS", (script,))
    with pytest.raises(RunsError, match="the disk is full"):
        Runs(path)
