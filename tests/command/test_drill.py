"""The command `drill`: scripted, piped, for a team, resumed, and refused with a plain word."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from chamberwise.tui.command.main import run

RUPTURE = "posterior-capsule-rupture"


@pytest.fixture(autouse=True)
def _home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path / "home"))
    monkeypatch.setenv("COLUMNS", "100")


@pytest.fixture
def typed(tmp_path: Path) -> Path:
    return tmp_path / "typed.txt"


def drill(capsys: pytest.CaptureFixture[str], typed: Path, text: str, *words: str) -> str:
    typed.write_text(text, encoding="utf-8")
    assert run(["drill", RUPTURE, "--answers", str(typed), "--seed", "7", *words]) == 0
    return " ".join(capsys.readouterr().out.split())


def test_the_same_script_gives_the_same_words(
    capsys: pytest.CaptureFixture[str], typed: Path
) -> None:
    text = "hold still\nstop\n@12 the capsule has gone!\nfill the chamber\ntake the tip out\n"
    first = drill(capsys, typed, text)
    assert first == drill(capsys, typed, text)
    assert "Cue to saying what it is: 12 s" in first
    assert "never operative skill" in first
    assert "no published benchmark" in first
    assert "never live care" in first


def test_nothing_says_what_it_is_before_somebody_does(
    capsys: pytest.CaptureFixture[str], typed: Path
) -> None:
    """T3: the transcript has no diagnosis before the trigger, help asked for or not."""
    for seed in ("1", "2", "3", "4", "5"):
        typed.write_text("hold still\n?\nstop aspirating\nfill the chamber\n", encoding="utf-8")
        run(["drill", RUPTURE, "--answers", str(typed), "--seed", seed])
        told = capsys.readouterr().out.split("Debrief:")[0].casefold()
        assert "rupture" not in told
        assert "capsule is open" not in told


def test_help_goes_up_the_ladder_and_is_recorded(
    capsys: pytest.CaptureFixture[str], typed: Path
) -> None:
    text = "the capsule is open\n?\n?\n?\nhold still\nstop aspirating\n"
    told = drill(capsys, typed, text, "--scenario", "fifth-of-six")
    assert told.index("Nudge:") < told.index("One of these is due") < told.index("Told: Next:")
    assert "Hold the tip still in the eye: once told" in told
    assert "Stop aspiration and ultrasound: once told" not in told


def test_what_it_is_can_be_picked_from_the_menu(
    capsys: pytest.CaptureFixture[str], typed: Path
) -> None:
    told = drill(capsys, typed, "?\n?\n", "--scenario", "fifth-of-six")
    menu = told[told.index("in your own words:") :]
    number = menu[: menu.index(" The back capsule is open")].split()[-1]
    told = drill(capsys, typed, f"?\n?\n{number}\n", "--scenario", "fifth-of-six")
    assert "= Recognised." in told


def test_a_rehearsal_goes_back_and_a_run_does_not(
    capsys: pytest.CaptureFixture[str], typed: Path
) -> None:
    """T7: back in a rehearsal, refused with one line why in a run."""
    text = "pull out\nback\nhold still\n"
    assert "A No harmful act: open" in drill(capsys, typed, text)
    told = drill(capsys, typed, text, "--mode", "run")
    assert "A run has no way back" in told
    assert "A No harmful act: not yet" in told


def test_words_that_are_not_understood_are_kept(
    capsys: pytest.CaptureFixture[str], typed: Path
) -> None:
    assert "“eat a banana”" in drill(capsys, typed, "eat a banana\n")


def test_time_is_out_when_it_is_out(capsys: pytest.CaptureFixture[str], typed: Path) -> None:
    told = drill(capsys, typed, "hold still\n@40 stop\n", "--seconds", "30")
    assert "= Done: Hold the tip still in the eye." in told
    assert "Left out: Stop aspiration and ultrasound" in told
    assert "interrupted" not in told


def test_a_team_has_one_owner_for_every_task(
    capsys: pytest.CaptureFixture[str], typed: Path
) -> None:
    """N2: roles are re-allocated; every task has exactly one owner, or the tool stops."""
    everybody = (
        "surgeon scrub-practitioner circulating-practitioner assistant anaesthetic-practitioner"
    )
    told = drill(capsys, typed, "a\nm\nm\nm\n.\n", "--team", "--roles", everybody)
    assert "m* Circulating practitioner: Call the senior surgeon [asked]" in told
    assert "m* Circulating practitioner: Call the senior surgeon [read back]" in told
    assert "m* Circulating practitioner: Call the senior surgeon [done]" in told
    assert "Anaesthetist or anaesthetic practitioner: Take the chart in hand" in told
    assert "Patient's hand-holder" not in told
    typed.write_text("a\n")
    words = ["drill", RUPTURE, "--team", "--roles", "surgeon reader", "--answers", str(typed)]
    assert run(words) == 2
    assert "Call the senior surgeon" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["no-such"], "no drills of `no-such`"),
        ([RUPTURE, "--scenario", "no-such"], "fifth-of-six"),
        (["--library", "no-such-folder"], "no-such-folder is not a folder"),
        ([RUPTURE, "--team", "--roles", "cook"], "`cook` is no role"),
    ],
)
def test_what_cannot_be_is_refused(
    capsys: pytest.CaptureFixture[str], words: list[str], told: str
) -> None:
    assert run(["drill", *words, "--answers", "-"]) == 2
    assert told in capsys.readouterr().err


def test_a_library_without_drills_says_so(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    (tmp_path / "empty").mkdir()
    assert run(["drill", "--library", str(tmp_path / "empty"), "--answers", "-"]) == 2
    assert "no drills" in capsys.readouterr().err


def test_a_scripted_drill_is_not_kept(
    capsys: pytest.CaptureFixture[str], typed: Path, tmp_path: Path
) -> None:
    drill(capsys, typed, "hold still\n")
    assert not (tmp_path / "home").exists()


def test_check_tells_a_fault_in_a_drill_file(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    import shutil

    from tests.engine.drill.stage import PROTOCOLS

    shutil.copytree(PROTOCOLS, tmp_path / "ours")
    file = tmp_path / "ours" / "drills" / "dropped-nucleus.yaml"
    file.write_text(file.read_text("utf-8").replace("soft: 5 s", "soft: soon", 1), "utf-8")
    words = ["check", "dropped-nucleus", "--library", str(tmp_path / "ours"), "--format", "json"]
    assert run(words) == 1
    assert any("soon" in each["message"] for each in json.loads(capsys.readouterr().out))
