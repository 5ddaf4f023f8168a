"""Translating by way of the commands: from an empty file to walks and sheets in German."""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from chamberwise.engine.language.speaking import speak
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

Said = pytest.CaptureFixture[str]
PATHWAY = "shallow-chamber"
GERMAN = ["--language", "de"]


@pytest.fixture(autouse=True)
def _in_english_afterwards() -> Iterator[None]:
    yield
    speak("en")


@pytest.fixture
def library(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path / "home"))
    folder = tmp_path / "library"
    shutil.copytree(Path(__file__).resolve().parents[1] / "library", folder)
    return folder


def translate(library: Path, *more: str) -> int:
    return run(["translate", PATHWAY, "--library", str(library), *GERMAN, *more])


def file_of(library: Path) -> Path:
    return library / "translations" / "de" / f"{PATHWAY}.yaml"


def filled(library: Path) -> Path:
    """Return the file with each text translated as its own upper case: no figure, no negation."""
    translate(library)
    path = file_of(library)
    text = path.read_text(encoding="utf-8")
    path.write_text(
        re.sub(r"    source: (.*)\n    # says:", r"    source: \1\n    says: \1 (deutsch)", text),
        encoding="utf-8",
    )
    return path


def test_a_language_has_to_be_named(library: Path, capsys: Said) -> None:
    assert run(["translate", PATHWAY, "--library", str(library)]) == Status.UNUSABLE
    assert "--language de" in capsys.readouterr().err


def test_a_fresh_file_lacks_everything_and_checks(library: Path, capsys: Said) -> None:
    assert translate(library) == Status.FINDINGS
    assert capsys.readouterr().out.strip() == str(file_of(library))
    assert run(["check", str(file_of(library)), "--library", str(library)]) == Status.CLEAN
    assert "missing-translations" in capsys.readouterr().out


def test_written_again_nothing_is_lost(library: Path) -> None:
    path = filled(library)
    before = path.read_text(encoding="utf-8")
    translate(library)
    assert path.read_text(encoding="utf-8") == before


def test_a_file_that_cannot_be_read_is_left_alone(library: Path, capsys: Said) -> None:
    path = filled(library)
    broken = path.read_text(encoding="utf-8").replace("texts:", "textes:", 1)
    path.write_text(broken, encoding="utf-8")
    assert translate(library) == Status.UNUSABLE
    assert path.read_text(encoding="utf-8") == broken
    assert f"{path}" in capsys.readouterr().err


def test_a_translation_in_a_remark_is_not_thrown_away(library: Path, capsys: Said) -> None:
    translate(library)
    path = file_of(library)
    remarked = path.read_text(encoding="utf-8").replace("# says:", "# says: Etwas", 1)
    path.write_text(remarked, encoding="utf-8")
    assert translate(library) == Status.UNUSABLE
    assert path.read_text(encoding="utf-8") == remarked


def test_another_translation_is_not_written_over(library: Path) -> None:
    translate(library)
    out = ["--out", str(file_of(library))]
    assert run(["translate", "vocabulary", "--library", str(library), *GERMAN, *out]) == (
        Status.UNUSABLE
    )


def test_a_walk_speaks_german_and_marks_what_it_lacks(
    library: Path, tmp_path: Path, capsys: Said
) -> None:
    filled(library)
    answers = tmp_path / "answers.txt"
    answers.write_text("done\n", encoding="utf-8")
    walk = ["walk", PATHWAY, "--plain", "--answers", str(answers), "--library", str(library)]
    capsys.readouterr()
    run([*walk, *GERMAN])
    told = " ".join(capsys.readouterr().out.split())
    assert "(deutsch)" in told
    assert "[en]" in told, "the shared words have no translation"
    run(["--language", "en", *walk])
    assert "(deutsch)" not in capsys.readouterr().out


def test_a_sheet_is_a_draft_that_says_how_far_it_was_read(library: Path, capsys: Said) -> None:
    filled(library)
    capsys.readouterr()
    show = ["print", PATHWAY, "--what", "kit-list", "--format", "text", "--library", str(library)]
    assert run([*show, *GERMAN]) == Status.CLEAN
    german = capsys.readouterr().out
    assert "[en]" in german
    assert run(show) == Status.CLEAN
    english = capsys.readouterr().out
    stamps = [re.search(r"[0-9A-Z]{4}-[0-9A-Z]{4}-[0-9A-Z]", text) for text in (german, english)]
    assert stamps[0]
    assert stamps[1]
    assert stamps[0].group() != stamps[1].group(), "other words, another stamp"


def test_a_verdict_is_the_same_in_any_language(library: Path, capsys: Said) -> None:
    filled(library)
    capsys.readouterr()
    prove = ["prove", PATHWAY, "--library", str(library), "--format", "json"]
    statuses, told = [], []
    for words in (prove, [*prove, *GERMAN]):
        statuses.append(run(words))
        told.append(re.findall(r'"verdict": "(.*?)"', capsys.readouterr().out))
    assert statuses[0] == statuses[1]
    assert told[0] == told[1]
    assert told[0]


def test_a_german_sheet_is_current_until_its_german_changes(library: Path, capsys: Said) -> None:
    path = filled(library)
    show = ["print", PATHWAY, "--what", "kit-list", "--library", str(library)]
    assert run([*show, "--out", str(library / "kit.pdf"), *GERMAN]) == Status.CLEAN
    found = re.search(r"[0-9A-Z]{4}-[0-9A-Z]{4}-[0-9A-Z]", capsys.readouterr().err)
    assert found
    ask = ["--language", "en", "stamp", found.group(), "--library", str(library)]
    assert run(ask) == Status.CLEAN
    changed = path.read_text(encoding="utf-8").replace("(deutsch)", "(anders)")
    path.write_text(changed, encoding="utf-8")
    assert run(ask) == Status.FINDINGS
    said = capsys.readouterr().out
    assert "(deutsch)" in said
    assert "(anders)" in said, "compared with the German of today"


def test_a_stale_translation_of_drills_is_not_approved(tmp_path: Path, capsys: Said) -> None:
    library = tmp_path / "protocols"
    shutil.copytree(Path(__file__).resolve().parents[2] / "protocols", library)
    path = library / "translations" / "de" / "drill-truth.yaml"
    stale = re.sub(r"    of: ....", "    of: AAAA", path.read_text(encoding="utf-8"), count=1)
    path.write_text(stale, encoding="utf-8")
    assert run(["approve", str(path), "--by", "Second reader"]) == Status.FINDINGS
    assert "1 text is missing, stale or doubtful" in capsys.readouterr().err
    assert path.read_text(encoding="utf-8") == stale
