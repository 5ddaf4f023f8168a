"""What the guide to local sheets shows is run, from nothing to an approved wall chart."""

from __future__ import annotations

import re
import shlex
import shutil
from pathlib import Path

import pytest
from chamberwise.engine.local.localising import base_digest
from chamberwise.engine.proof.rules import rules_for
from chamberwise.engine.reading.form_local import CHANGE, LOCAL_SHEET
from chamberwise.engine.reading.library import load_library
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

TOP = Path(__file__).parents[1]
PROTOCOLS = TOP / "protocols"
GUIDE = (PROTOCOLS / "LOCAL.md").read_text(encoding="utf-8")
DEMONSTRATION = PROTOCOLS / "demonstration" / "harbour-eye-unit.yaml"
BLOCKS = re.findall(r"```yaml\n(.*?)```", GUIDE, re.DOTALL)
SWITCHED_OFF = next(block for block in BLOCKS if block.startswith("switched off:"))
COMMANDS = [
    shlex.split(line.strip()) for line in GUIDE.splitlines() if line.startswith("    chamberwise ")
]
Said = pytest.CaptureFixture[str]


def whole(*left_out: str) -> str:
    digest = base_digest(load_library(PROTOCOLS).library, "anterior-vitrectomy")
    kept = [block for block in BLOCKS if block not in left_out]
    return "\n".join(kept).replace("DIGEST", digest)


def test_the_way_from_nothing_to_an_approved_wall_chart(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path / "home"))
    new, check, prove, show, approve, again = ([*each[1:]] for each in COMMANDS[:6])
    assert run(new) == Status.CLEAN
    assert run(check) == Status.CLEAN
    Path("harbour.yaml").write_text(whole(SWITCHED_OFF), encoding="utf-8")
    assert run(check) == Status.CLEAN, capsys.readouterr().out
    assert run(prove) == Status.CLEAN
    capsys.readouterr()
    text = ["--format", "text"]
    assert run([*show, *text]) == Status.CLEAN
    draft = capsys.readouterr().out
    assert draft.startswith("DRAFT: NOT APPROVED")
    assert "extension X101, theatre days 08:00 to 18:00; otherwise extension X100" in draft
    assert run(approve) == Status.CLEAN
    assert run([*again, *text]) == Status.CLEAN
    chart = capsys.readouterr().out
    assert "DRAFT" not in chart
    assert "Approved by Clinical lead for cataract" in chart
    assert "Harbour Eye Unit" in chart
    assert run(again) == Status.CLEAN
    assert Path("anterior-vitrectomy-wall-chart-A3.pdf").read_bytes().startswith(b"%PDF")
    assert run([*again[:2], "--what", "kit-list"]) == Status.CLEAN, capsys.readouterr().err


def test_a_translation_is_approved_as_the_guide_says(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (approve,) = ([*each[1:]] for each in COMMANDS[6:])
    monkeypatch.chdir(shutil.copytree(PROTOCOLS, tmp_path / "pathways"))
    assert run(approve) == Status.CLEAN
    text = Path("translations/de/anterior-vitrectomy.yaml").read_text(encoding="utf-8")
    assert "status: approved\napproved by: Consultant ophthalmologist\n" in text


def test_a_rule_switched_off_stands_on_every_page_and_first_in_the_proof(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    monkeypatch.chdir(tmp_path)
    rule = rules_for(load_library(PROTOCOLS).library, "anterior-vitrectomy")[0]
    path = tmp_path / "harbour.yaml"
    path.write_text(whole().replace("RULE", rule.id), encoding="utf-8")
    for what in ("wall-chart", "kit-list", "pocket-card"):
        assert run(["print", str(path), "--what", what, "--format", "text"]) == Status.CLEAN
        said = capsys.readouterr().out
        assert "SAFETY RULE SWITCHED OFF HERE" in said
        assert rule.title in said
        assert "Clinical lead for cataract, 20 Nov 2026: The reason, as it stands" in said
    run(["prove", str(path), "--rule", "no-such"])
    run(["prove", str(path)])
    assert f"SWITCHED OFF: {rule.title}"[:60] in capsys.readouterr().out


def test_every_key_of_a_sheet_stands_in_the_guide() -> None:
    keys = {*LOCAL_SHEET.keys} | {key for record in CHANGE.by_key.values() for key in record.keys}
    assert [key for key in sorted(keys) if f"{key}:" not in GUIDE and f"`{key}" not in GUIDE] == []


def test_the_demonstration_checks_and_says_that_it_is_invented(capsys: Said) -> None:
    assert run(["check", str(DEMONSTRATION), "--on", "2026-11-29"]) == Status.CLEAN, (
        capsys.readouterr().out
    )
    text = DEMONSTRATION.read_text(encoding="utf-8")
    assert "invented" in text.split("\n", 3)[1]
    numbers = re.findall(r"(?:number|outside hours): (.*?)(?:,|\n|$)", text)
    assert numbers
    assert all(re.fullmatch(r"extension X\d+", each) for each in numbers), "none can be dialled"


def test_the_demonstration_keeps_every_safety_rule() -> None:
    assert run(["prove", str(DEMONSTRATION), "--format", "json"]) == Status.CLEAN
