"""What `chamberwise print` tells of the audit: reports, errors that stop, waivers."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from chamberwise.exports.audit.report import NO_CLAIM
from chamberwise.exports.audit.rules.registry import RULES
from chamberwise.exports.paper.sheet import Sheet
from chamberwise.exports.printing import auditing, kinds
from chamberwise.exports.printing.order import Kind
from chamberwise.exports.typesetting import compiling
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status
from chamberwise.tui.printing import NOT_AUDITED

from tests.exports.printing.rooms import use_test_rooms

Said = pytest.CaptureFixture[str]
LIBRARY = Path(__file__).resolve().parents[1] / "library"
DRAFT, APPROVED = "shallow-chamber", "pressing-lids"


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Print with the room of the tests, whose wall chart the audit finds too small."""
    use_test_rooms(monkeypatch, audited=True)
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path / "home"))
    folder = tmp_path / "here"
    folder.mkdir()
    monkeypatch.chdir(folder)
    return folder


def typed(name: str, *words: str) -> int:
    command = ["print", "--library", str(LIBRARY), "--date", "2026-11-25", name, *words]
    try:
        return run(command)
    except SystemExit as end:
        return int(end.code or 0)


def errors(said: str) -> dict[str, int]:
    """Return how many errors the JSON report has of each rule."""
    (report,) = json.loads(said)["reports"]
    found = [each["rule"] for each in report["found"] if each["severity"] == "error"]
    return {rule: found.count(rule) for rule in found}


def waivers(rules: dict[str, int]) -> list[str]:
    return [word for rule in rules for word in ("--waive", f"{rule}=Agreed by the team.")]


def test_a_draft_is_printed_and_its_errors_are_told_in_one_line(here: Path, capsys: Said) -> None:
    assert typed(DRAFT) == Status.CLEAN
    said = capsys.readouterr()
    assert said.out == f"{DRAFT}-wall-chart-A3.pdf\n"
    assert NOT_AUDITED not in said.err.splitlines()
    assert typed(DRAFT, "--report=json") == Status.CLEAN
    report = capsys.readouterr()
    count = sum(errors(report.out).values())
    assert count
    for each in (said, report):
        assert f"The audit found {count} errors: the report shows them." in each.err.splitlines()


def test_a_draft_of_many_pages_is_audited_when_that_is_asked(
    capsys: Said, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("chamberwise.tui.preparing.FEW", 0)
    assert typed(DRAFT) == Status.CLEAN
    assert NOT_AUDITED in capsys.readouterr().err.splitlines()
    assert typed(DRAFT, "--report") == Status.CLEAN
    assert NOT_AUDITED not in capsys.readouterr().err.splitlines()


def test_the_report_names_every_rule_and_claims_nothing(capsys: Said) -> None:
    assert typed(DRAFT, "--report") == Status.CLEAN
    out = capsys.readouterr().out
    assert out.startswith(f"{DRAFT}-wall-chart-A3.pdf\n\nAudit of ")
    assert all(rule.id in out for rule in RULES)
    assert NO_CLAIM in out


def test_a_pack_has_a_report_for_each_kind(capsys: Said) -> None:
    assert typed(DRAFT, "--what", "pack", "--report", "json") == Status.CLEAN
    told = json.loads(capsys.readouterr().out)
    assert told["files"] == [f"{DRAFT}-pack-A3.pdf"]
    kinds_told = [each["sheet"].rpartition(", ")[2] for each in told["reports"]]
    assert kinds_told == [kind.words for kind in Kind]


def test_an_approved_sheet_with_errors_is_reported_and_not_written(
    here: Path, capsys: Said
) -> None:
    assert typed(APPROVED, "--report", "json") == Status.FINDINGS
    said = capsys.readouterr()
    assert json.loads(said.out)["files"] == []
    assert json.loads(said.out)["reports"][0]["stops"] is True
    assert "it is approved, and the audit finds errors" in said.err
    assert list(here.iterdir()) == []


def test_waived_errors_let_an_approved_sheet_out_and_are_told(here: Path, capsys: Said) -> None:
    typed(APPROVED, "--report", "json")
    found = errors(capsys.readouterr().out)
    assert len(found) > 1
    assert typed(APPROVED, *waivers(dict(list(found.items())[1:]))) == Status.FINDINGS
    assert list(here.iterdir()) == []
    capsys.readouterr()
    assert typed(APPROVED, *waivers(found), "--report") == Status.CLEAN
    said = capsys.readouterr()
    for rule, count in found.items():
        places = "1 place" if count == 1 else f"{count} places"
        assert f"Waived {rule} at {places}: Agreed by the team." in said.err
        assert f"ERROR {rule} " in said.out
    assert said.out.count("WAIVED: Agreed by the team.") >= len(found)
    assert (here / f"{APPROVED}-wall-chart-A3.pdf").exists()


def test_a_waiver_that_is_not_needed_is_told(capsys: Said) -> None:
    assert typed(DRAFT, "--waive", "med-01=Agreed by pharmacy.") == Status.CLEAN
    told = "The waiver for MED-01 is not needed: no sheet breaks the rule."
    assert told in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--waive", "XYZ-01=fine"), "the audit has no rule `XYZ-01`"),
        (("--waive", "fine"), "the audit has no rule `FINE`"),
        (("--waive", "LEG-12"), "say why: `--waive LEG-12=REASON`"),
        (("--waive", "LEG-12= "), "say why: `--waive LEG-12=REASON`"),
        (("--waive", "LEG-12=a\x07b"), "the reason as plain text"),
        (("--report", "xml"), "xml"),
        (("--format", "text", "--report"), "The audit is of paper"),
        (("--out", "x.txt", "--waive", "LEG-12=fine"), "The audit is of paper"),
        (("--what", "role-cards", "--paper", "A3"), "`role-cards` is made from A4"),
    ],
)
def test_what_cannot_be_audited_so_says_why(
    words: tuple[str, ...], told: str, here: Path, capsys: Said
) -> None:
    assert typed(DRAFT, *words) == Status.UNUSABLE
    assert told in capsys.readouterr().err
    assert list(here.iterdir()) == []


def test_tiles_are_audited_beside_the_whole_they_are_cut_from(capsys: Said) -> None:
    assert typed(DRAFT, "--tiles", "--report", "json") == Status.CLEAN
    whole, cut = json.loads(capsys.readouterr().out)["reports"]
    assert cut["sheet"] == f"{whole['sheet']}, cut into tiles"
    assert "Cut into 2 by 2 tiles" in cut["declared"]
    assert cut["stops"] is False
    judged = {each["rule"]: each["worst"] for each in cut["rules"]}
    assert judged["PRT-04"] == "0 faults"
    assert "LEG-01" not in judged


def test_a_tile_without_its_label_is_found(monkeypatch: pytest.MonkeyPatch, capsys: Said) -> None:
    from chamberwise.exports.tiling import cutting

    draw = cutting._label
    monkeypatch.setattr(
        cutting, "_label", lambda _, *more: draw("No tile of this sheet has a name", *more)
    )
    assert typed(DRAFT, "--tiles", "--report", "json") == Status.CLEAN
    cut = json.loads(capsys.readouterr().out)["reports"][1]
    assert [each["measured"] for each in cut["found"]] == ["4 tiles without their label"]


@pytest.mark.parametrize(
    ("words", "most"),
    [(("--what", "script"), 1), (("--what", "pack"), 1), (("--tiles",), 2)],
)
def test_what_is_audited_is_made_once(
    words: tuple[str, ...], most: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    made: list[Sheet] = []
    compile_once = compiling.to_pdf

    def counted(sheet: Sheet) -> bytes:
        made.append(sheet)
        return compile_once(sheet)

    for module in (auditing, compiling):
        monkeypatch.setattr(module, "to_pdf", counted)
    assert typed(DRAFT, "--report", *words) == Status.CLEAN
    assert len(made) == most


def test_cards_lie_on_a4_in_the_register_too(tmp_path: Path) -> None:
    from chamberwise.engine.store.register_file import read

    assert typed(DRAFT, "--what", "role-cards", "--portrait") == Status.CLEAN
    (copy,) = read(tmp_path / "home" / "register.json").copies
    assert copy.paper == str(kinds.usual(Kind.ROLE_CARDS))


def test_in_a_language_nobody_reviewed_an_approved_pathway_is_a_draft(
    here: Path, capsys: Said
) -> None:
    assert typed(APPROVED, "--language", "de") == Status.CLEAN
    said = " ".join(capsys.readouterr().err.split())
    assert "Fehler gefunden: der Bericht zeigt sie." in said
    assert "Freigegeben ist der englische Text; in dieser Sprache wird als Entwurf gedruckt" in said
    assert (here / f"{APPROVED}-wall-chart-A3.pdf").exists()
    assert typed(APPROVED) == Status.FINDINGS
