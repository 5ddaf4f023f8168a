"""A unit's own pathway with the unit's own sheet over it: from `new` to an approved chart."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from chamberwise.tui.command import watching
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

Said = pytest.CaptureFixture[str]
BY = ["--by", "Clinical lead"]


@pytest.fixture(autouse=True)
def _here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path / "home"))
    (tmp_path / "unit").mkdir()
    monkeypatch.chdir(tmp_path / "unit")


def begun(summary: str = "For the team that meets a leak.") -> Path:
    assert run(["new", "wound-leak", "--summary", summary]) == Status.CLEAN
    assert run(["new", "ours", "--over", "wound-leak.yaml", "--unit", "Our unit"]) == Status.CLEAN
    return Path("ours.yaml")


def every_choice_made(sheet: Path) -> None:
    """Take the remark before each choice away and set its last position, as a reader would."""
    lines, last = [], ""
    for line in sheet.read_text(encoding="utf-8").splitlines():
        position = re.match(r"#   #   ([a-z0-9-]+): ", line)
        choice = re.match(r"#   ([a-z-]+): \{chosen: , because: \}", line)
        last = position[1] if position else last
        line = f"  {choice[1]}: {{chosen: {last}, because: Agreed.}}" if choice else line
        lines.append("choices:" if line == "# choices:" else line)
    text = "\n".join(lines).replace("\nedition: 0.1\nstatus", "\nedition: 1\nstatus")
    sheet.write_text(f"{text}\n", encoding="utf-8")


def test_a_sheet_over_an_own_pathway_is_approved_and_falls_with_either(capsys: Said) -> None:
    sheet = begun()
    every_choice_made(sheet)
    assert run(["check", "ours.yaml"]) == Status.CLEAN, capsys.readouterr().out
    assert run(["approve", "ours.yaml", *BY]) == Status.CLEAN, capsys.readouterr().err
    assert run(["print", "ours.yaml", "--format", "text"]) == Status.CLEAN
    assert "DRAFT" not in capsys.readouterr().out
    assert run(["list", "--sheets", "."]) == Status.CLEAN
    assert re.search(r"ours.yaml +Our unit +wound-leak +1 +approved", capsys.readouterr().out)
    pathway = Path("wound-leak.yaml")
    edited = pathway.read_text(encoding="utf-8").replace("at most: 3", "at most: 2")
    pathway.write_text(edited, encoding="utf-8")
    assert run(["check", "ours.yaml"]) == Status.FINDINGS
    said = capsys.readouterr().out
    assert "[base-changed]" in said
    assert "[edited-since-approval]" in said


def test_whoever_approves_an_own_pathway_hears_where_choices_are_made(capsys: Said) -> None:
    begun()
    assert run(["approve", "wound-leak.yaml", *BY]) == Status.FINDINGS
    said = capsys.readouterr().err
    assert "`chamberwise new our-unit --over wound-leak.yaml`" in said
    assert "choose `limbal` or `pars-plana`" in said


def test_what_the_scaffold_says_of_itself_is_not_approved(capsys: Said) -> None:
    assert run(["new", "wound-leak"]) == Status.CLEAN
    assert run(["approve", "wound-leak.yaml", *BY]) == Status.FINDINGS
    assert "its `summary` is still what `new` wrote" in capsys.readouterr().err


def test_a_sheet_has_its_pathway_beside_it_or_is_not_begun(capsys: Said) -> None:
    begun()
    Path("elsewhere").mkdir()
    asked = ["new", "more", "--over", "wound-leak.yaml", "--out", "elsewhere"]
    assert run(asked) == Status.UNUSABLE
    assert "finds its pathway beside it, as wound-leak.yaml" in capsys.readouterr().err
    assert run(["new", "more", "--over", "ours.yaml"]) == Status.UNUSABLE
    assert "ours.yaml is no pathway" in capsys.readouterr().err
    assert run(["new", "more", "--over", "wound-leek"]) == Status.UNUSABLE
    assert "There is no pathway `wound-leek`" in capsys.readouterr().err
    assert run(["new", "more", "--over", "wound-leak"]) == Status.CLEAN
    Path("wound-leak.yaml").unlink()
    assert run(["check", "more.yaml"]) == Status.FINDINGS
    assert "[no-base]" in capsys.readouterr().out


def test_watching_a_sheet_looks_at_the_pathway_beside_it(
    capsys: Said, monkeypatch: pytest.MonkeyPatch
) -> None:
    begun()
    pathway = Path("wound-leak.yaml")
    looks = iter(["at most: 2", "", ""])

    def slept(_: float) -> None:
        edit = next(looks, None)
        if edit is None:
            raise KeyboardInterrupt
        if edit:
            text = pathway.read_text(encoding="utf-8").replace("at most: 3", edit)
            pathway.write_text(text, encoding="utf-8")
            pathway.touch()

    monkeypatch.setattr(watching.time, "sleep", slept)
    assert run(["check", "ours.yaml", "--watch"]) == Status.INTERRUPTED
    told = capsys.readouterr().out
    assert told.count("2 files: ") == 2
    assert told.count("[base-changed]") == 1


def test_a_stamp_tells_what_the_unit_changed_and_how_to_print_anew(capsys: Said) -> None:
    sheet = begun()
    phone = "phones:\n  call-for-help: {number: extension X101, hours: at any hour}\n"
    text = sheet.read_text(encoding="utf-8") + phone
    sheet.write_text(text, encoding="utf-8")
    assert run(["print", "ours.yaml"]) == Status.CLEAN
    (code,) = re.findall(r"Stamp of the wall chart: (\S+)", capsys.readouterr().err)
    assert run(["stamp", code]) == Status.CLEAN
    sheet.write_text(text.replace("X101", "X102"), encoding="utf-8")
    capsys.readouterr()
    assert run(["stamp", code]) == Status.FINDINGS
    said = capsys.readouterr().out
    assert "The unit's sheet says something else under `phones`." in said
    assert "chamberwise print ours.yaml --what wall-chart" in said


def test_its_translation_lies_beside_it_and_is_shown_checked_and_read(capsys: Said) -> None:
    begun()
    capsys.readouterr()
    assert run(["--language", "de", "translate", "wound-leak.yaml"]) == Status.FINDINGS
    path = Path("translations/de/wound-leak.yaml")
    assert capsys.readouterr().out.strip() == str(path)
    text = path.read_text(encoding="utf-8")
    source = "    source: Wound leak\n    # says:\n"
    assert source in text
    said = text.replace(source, source.replace("# says:", "says: Undichter Schnitt"))
    path.write_text(said, encoding="utf-8")
    for name in ("wound-leak.yaml", "ours.yaml"):
        asked = ["--language", "de", "print", name, "--format", "text", "--no-register"]
        assert run(asked) == Status.CLEAN
        assert "Undichter Schnitt" in capsys.readouterr().out
    assert run(["check", str(path)]) == Status.CLEAN
    assert "27 of 28 texts have no translation" in capsys.readouterr().out
    path.write_text(said.replace("Undichter", "3 undichte"), encoding="utf-8")
    assert run(["check", str(path)]) == Status.FINDINGS
    assert "3" in capsys.readouterr().out
