"""`compare` over files, folders, names and revisions: what it tells and how it ends."""

from __future__ import annotations

import json
import shutil
import subprocess
from pathlib import Path

import pytest
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

from tests.tui.golden import assert_as_kept

Said = pytest.CaptureFixture[str]
LIBRARY = Path(__file__).resolve().parents[1] / "library"
KEPT = Path(__file__).resolve().parents[1] / "exports" / "comparing" / "kept"
ON = ["--on", "2026-11-25"]


@pytest.fixture(autouse=True)
def _own_home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path / "home"))


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    return Path(shutil.copytree(LIBRARY, tmp_path / "copy"))


def edit(path: Path, was: str, now: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert text.count(was) == 1
    path.write_text(text.replace(was, now), encoding="utf-8")


def a_year_later(folder: Path) -> None:
    path = folder / "shallow-chamber.yaml"
    edit(path, "inside: how-deep\n", "inside: closed\n")
    edit(path, "does: Hydrate both edges of the wound.", "does: Hydrate both edges for 10 s.")
    edit(path, "needs: [suture]", "needs: [suture, cannula]")
    edit(path, "edition: 0.4", "edition: 0.5")
    edit(path, "  sweep:\n", "  sweep-it:\n")
    edit(path, "cannot tell: sweep\n", "cannot tell: sweep-it\n")


def test_what_changed_is_told_the_gravest_first(copy: Path, capsys: Said) -> None:
    a_year_later(copy)
    assert run(["compare", str(LIBRARY), str(copy), *ON]) == Status.FINDINGS
    assert_as_kept(KEPT / "a-year-later.txt", capsys.readouterr().out)


def test_what_changed_comes_as_values_too(copy: Path, capsys: Said) -> None:
    a_year_later(copy)
    assert run(["compare", str(LIBRARY), str(copy), *ON, "--format", "json"]) == Status.FINDINGS
    (_, shallow) = json.loads(capsys.readouterr().out)["comparisons"]
    weights = [each["weight"] for each in shallow["changes"]]
    assert weights == sorted(weights, key=["safety", "procedural", "editorial"].index)
    broken = {"rule": "iris-is-inside", "was": "holds", "now": "broken"}
    assert [{**each, "title": ""} for each in shallow["verdicts"]] == [{**broken, "title": ""}]
    assert shallow["walk"]["was"]["text"] != shallow["walk"]["now"]["text"]


def test_the_same_twice_is_the_same(copy: Path, capsys: Said) -> None:
    assert run(["compare", str(LIBRARY), str(copy)]) == Status.CLEAN
    assert capsys.readouterr().out.count("No change in meaning.") == 2


def test_a_name_and_a_file_stand_beside_each_other(copy: Path, capsys: Said) -> None:
    path = copy / "pressing-lids.yaml"
    asked = ["--library", str(LIBRARY)]
    assert run(["compare", "pressing-lids", str(path), *asked]) == Status.CLEAN
    edit(path, "edition: ", "edition: 9")
    assert run(["compare", "pressing-lids", str(path), *asked]) == Status.FINDINGS
    assert "0 safety" not in capsys.readouterr().out


def test_pathways_that_came_and_went_are_named(copy: Path, capsys: Said) -> None:
    (copy / "shallow-chamber.yaml").unlink()
    assert run(["compare", str(LIBRARY), str(copy)]) == Status.FINDINGS
    assert "shallow-chamber: the pathway is gone." in capsys.readouterr().out
    assert run(["compare", str(copy), str(LIBRARY)]) == Status.FINDINGS
    assert "shallow-chamber: the pathway is new." in capsys.readouterr().out


def test_a_pathway_that_bears_another_name_neither_went_nor_came(copy: Path, capsys: Said) -> None:
    path = copy / "shallow-chamber.yaml"
    edit(path, "pathway: shallow-chamber", "pathway: flat-chamber")
    path.rename(copy / "flat-chamber.yaml")
    assert run(["compare", str(LIBRARY), str(copy)]) == Status.FINDINGS
    said = capsys.readouterr().out
    assert "the pathway is" not in said
    assert "1 change: 1 editorial." in said


def test_what_is_not_rated_is_named(copy: Path, capsys: Said, tmp_path: Path) -> None:
    (copy / "drills").mkdir()
    book = copy / "drills" / "shallow-chamber.yaml"
    book.write_text("drill of: shallow-chamber\nlasts: 240 s\n", encoding="utf-8")
    edit(copy / "vocabulary" / "words.yaml", "acts:\n", "acts:\n  yawn: {title: Yawn}\n")
    newer = Path(shutil.copytree(copy, tmp_path / "newer"))
    edit(newer / "drills" / "shallow-chamber.yaml", "lasts:", "# Read.\nlasts:")
    assert run(["compare", str(copy), str(newer)]) == Status.CLEAN
    edit(newer / "drills" / "shallow-chamber.yaml", "240 s", "260 s")
    edit(newer / "vocabulary" / "words.yaml", "{title: Yawn}", "{title: Yawn twice}")
    capsys.readouterr()
    assert run(["compare", str(copy), str(newer)]) == Status.FINDINGS
    said = capsys.readouterr().out
    assert "drills/shallow-chamber.yaml: changed, and not rated here." in said
    assert "vocabulary / acts / yawn: changed, and not rated here." in said
    assert run(["compare", str(newer), str(LIBRARY), "--format", "json"]) == Status.FINDINGS
    values = json.loads(capsys.readouterr().out)
    assert not values["same"]
    assert set(values["not rated"].values()) == {"is gone"}


def test_what_cannot_be_read_is_told_with_its_line(copy: Path, capsys: Said) -> None:
    path = copy / "shallow-chamber.yaml"
    edit(path, "title: Shallow chamber", "title: Shallow chamber\ntitel: x")
    assert run(["compare", str(LIBRARY / "shallow-chamber.yaml"), str(path)]) == Status.UNUSABLE
    assert "shallow-chamber.yaml:4:1" in capsys.readouterr().err


def test_what_cannot_be_walked_is_compared_as_far_as_it_goes(copy: Path, capsys: Said) -> None:
    edit(copy / "shallow-chamber.yaml", "go to: tuck", "go to: tuk")
    assert run(["compare", str(LIBRARY), str(copy)]) == Status.FINDINGS
    said = capsys.readouterr().out
    assert "now: tuk" in said
    assert "The new version cannot be walked" in said


@pytest.mark.parametrize("typed", ["nothing-like-it", "no/such.yaml", "-x:a.yaml", "HEAD:no.yaml"])
def test_what_is_nothing_is_refused(typed: str, capsys: Said) -> None:
    asked = ["compare", "--library", str(LIBRARY), "--", typed, "pressing-lids"]
    assert run(asked) == Status.UNUSABLE
    assert capsys.readouterr().err


def git(folder: Path, *words: str) -> None:
    named = ["-c", "user.name=A", "-c", "user.email=a@example.org", "-c", "commit.gpgsign=false"]
    subprocess.run(["git", *named, *words], cwd=folder, check=True, capture_output=True)


@pytest.mark.skipif(shutil.which("git") is None, reason="git is not on the path")
def test_a_revision_is_read_and_nothing_is_written(
    copy: Path, capsys: Said, monkeypatch: pytest.MonkeyPatch
) -> None:
    for words in (["init", "-q"], ["add", "."], ["commit", "-q", "-m", "First"]):
        git(copy, *words)
    a_year_later(copy)
    (copy / "drills").mkdir()
    (copy / "drills" / "phrases.yaml").write_text("phrases: {}\n", encoding="utf-8")
    monkeypatch.chdir(copy)
    before = {path: path.stat().st_mtime_ns for path in copy.rglob("*") if path.is_file()}
    assert run(["compare", "HEAD:shallow-chamber.yaml", "shallow-chamber.yaml"]) == Status.FINDINGS
    assert "now: edition 0.5" in capsys.readouterr().out
    assert run(["compare", "HEAD:", "."]) == Status.FINDINGS
    assert "Shallow chamber (shallow-chamber)" in capsys.readouterr().out
    assert run(["compare", "HEAD:", "HEAD:"]) == Status.CLEAN
    capsys.readouterr()
    assert run(["compare", "HEAD:", "."]) == Status.FINDINGS
    assert "drills/phrases.yaml: new, and not rated here." in capsys.readouterr().out
    monkeypatch.chdir(copy / "vocabulary")
    assert run(["compare", "HEAD:", ".."]) == Status.FINDINGS
    assert "now: edition 0.5" in capsys.readouterr().out
    after = {path: path.stat().st_mtime_ns for path in copy.rglob("*") if path.is_file()}
    assert after == before


def test_without_git_a_revision_is_refused_in_words(
    capsys: Said, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PATH", "")
    asked = ["compare", "HEAD:a.yaml", "pressing-lids", "--library", str(LIBRARY)]
    assert run(asked) == Status.UNUSABLE
    assert "git must be on the path" in capsys.readouterr().err


def test_a_log_has_one_dated_entry(copy: Path, capsys: Said) -> None:
    a_year_later(copy)
    assert run(["compare", str(LIBRARY), str(copy), *ON, "--log"]) == Status.FINDINGS
    assert_as_kept(KEPT / "log.md", capsys.readouterr().out)


@pytest.mark.parametrize(
    ("sides", "name", "told"),
    [
        (("", ""), "paper.pdf", "A paper is of one pathway."),
        (("shallow-chamber.yaml",) * 2, "paper.txt", "does not end in .pdf"),
        (("shallow-chamber.yaml",) * 2, "taken.pdf", "is there already"),
    ],
)
def test_a_paper_that_cannot_be_made_is_refused_before_anything_is_compared(
    tmp_path: Path, capsys: Said, sides: tuple[str, str], name: str, told: str
) -> None:
    (tmp_path / "taken.pdf").write_bytes(b"somebody's")
    old, new = (str(LIBRARY / each) for each in sides)
    typed = ["compare", old, new, "--library", str(LIBRARY), *ON, "--paper", str(tmp_path / name)]
    assert run(typed) == Status.UNUSABLE
    said = capsys.readouterr()
    assert told in said.err
    assert (said.out, "Comparing" in said.err) == ("", False)
    assert (tmp_path / "taken.pdf").read_bytes() == b"somebody's"
    assert sorted(each.name for each in tmp_path.glob("*.*")) == ["taken.pdf"]


def test_a_paper_that_cannot_be_written_is_told_and_leaves_nothing(
    tmp_path: Path, capsys: Said
) -> None:
    path = tmp_path / "a-file" / "paper.pdf"
    path.parent.write_bytes(b"somebody's")
    file = str(LIBRARY / "shallow-chamber.yaml")
    typed = ["compare", file, file, "--library", str(LIBRARY), *ON, "--paper", str(path)]
    assert run(typed) == Status.UNUSABLE
    assert "a-file is a file, not a folder" in capsys.readouterr().err
    assert path.parent.read_bytes() == b"somebody's"
