"""`chamberwise prove` as typed."""

from __future__ import annotations

import io
import json
import shlex
import shutil
from functools import partial
from pathlib import Path

import pytest
from chamberwise.engine.mutants.strength import OfKind, Strength, Survivor
from chamberwise.engine.proof import prove as proving
from chamberwise.exports.proof.text import what_it_means
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

Said = pytest.CaptureFixture[str]
LIBRARY = Path(__file__).resolve().parents[1] / "exports" / "proof" / "library"
SOUND = ("asked-before-hydrating", "twice-at-most")


def typed(library: Path, *words: str) -> int:
    return run(["prove", "--library", str(library), *words])


@pytest.fixture(autouse=True)
def nothing_typed(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO())
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path / "home"))


@pytest.fixture
def library(tmp_path: Path) -> Path:
    """Return a copy of the library whose rules are broken on purpose."""
    return shutil.copytree(LIBRARY, tmp_path / "library")


def edit(path: Path, old: str, new: str) -> None:
    text = path.read_text()
    assert old in text
    path.write_text(text.replace(old, new, 1))


def one_line(text: str) -> str:
    return " ".join(text.split())


def rules_of(said: str) -> dict[str, str]:
    """Return the verdict of each rule of the first pathway told in JSON."""
    return {rule["rule"]: rule["verdict"] for rule in json.loads(said)["pathways"][0]["rules"]}


def test_a_broken_rule_is_a_finding_and_its_story_is_told(capsys: Said) -> None:
    assert typed(LIBRARY, "leaking-wound") == Status.FINDINGS
    said = capsys.readouterr()
    assert said.err == ""
    assert "BROKEN: No suture in a chamber that may be flat" in said.out
    assert ">>> HERE: " in said.out
    assert said.out.endswith(f"{what_it_means()}\n")


def test_every_verdict_stands_in_the_json(capsys: Said) -> None:
    assert typed(LIBRARY, "leaking-wound", "--format", "json") == Status.FINDINGS
    assert rules_of(capsys.readouterr().out) == {
        "deep-before-suture": "broken",
        "patient-is-told": "broken",
        "no-suture-on-a-stale-look": "broken",
        "stay-in-the-wound": "broken",
        "air-before-water": "does not arise",
        "air-after-looking": "does not arise",
        "twice-at-most": "holds",
        "asked-before-hydrating": "holds",
    }


def test_without_names_every_pathway_is_proved(capsys: Said) -> None:
    typed(LIBRARY, "--format", "json")
    told = json.loads(capsys.readouterr().out)
    assert [each["pathway"] for each in told["pathways"]] == ["leaking-wound", "restless-patient"]
    assert told["problems"] == []
    assert "mutants" not in told


def test_only_the_rules_asked_for(capsys: Said) -> None:
    words = [word for name in SOUND for word in ("--rule", name)]
    assert typed(LIBRARY, "leaking-wound", "--format", "json", *words) == Status.CLEAN
    assert set(rules_of(capsys.readouterr().out)) == set(SOUND)


def test_a_rule_of_one_pathway_alone_leaves_the_others_out(capsys: Said) -> None:
    assert typed(LIBRARY, "--rule", "twice-at-most", "--format", "json") == Status.CLEAN
    pathways = json.loads(capsys.readouterr().out)["pathways"]
    assert [each["pathway"] for each in pathways] == ["leaking-wound"]


def test_rules_that_hold_are_named_when_asked_for(capsys: Said) -> None:
    typed(LIBRARY, "leaking-wound", "--rule", "twice-at-most")
    assert "HOLDS" not in capsys.readouterr().out
    typed(LIBRARY, "leaking-wound", "--rule", "twice-at-most", "--all")
    assert "HOLDS: The wound is hydrated twice at most (`twice-at-most`)" in capsys.readouterr().out


def test_a_house_rule_that_does_not_arise_is_no_finding_and_an_own_rule_is(capsys: Said) -> None:
    assert typed(LIBRARY, "leaking-wound", "--rule", "air-after-looking") == Status.CLEAN
    assert "1 house rule does not arise here" in capsys.readouterr().out
    assert typed(LIBRARY, "leaking-wound", "--rule", "air-before-water") == Status.FINDINGS
    assert "DOES NOT ARISE: Never air and water both" in capsys.readouterr().out


def test_a_rule_unproven_and_none_broken_is_told_by_a_status_of_its_own(
    capsys: Said, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(proving, "prove", partial(proving.prove, most=0))
    assert typed(LIBRARY, "leaking-wound", "--rule", "twice-at-most") == Status.UNPROVEN
    assert "UNPROVEN: The wound is hydrated twice at most" in capsys.readouterr().out


def test_a_file_beside_the_library_is_proved_in_it(
    library: Path, tmp_path: Path, capsys: Said
) -> None:
    local = tmp_path / "leaking-wound.yaml"
    shutil.copy(library / "leaking-wound.yaml", local)
    edit(local, "at most: 2\n    after that", "at most: 3\n    after that")
    status = typed(library, str(local), "--rule", "twice-at-most", "--format", "json")
    rule = json.loads(capsys.readouterr().out)["pathways"][0]["rules"][0]
    assert (status, rule["verdict"], rule["file"]) == (Status.FINDINGS, "broken", str(local))
    replay = shlex.split(rule["counterexample"]["replay"])
    assert str(local) in replay
    assert run([*replay[1:], "--plain"]) == Status.CLEAN
    said = one_line(capsys.readouterr().out)
    assert "Here a rule breaks: The wound is hydrated twice at most." in said


@pytest.mark.parametrize("name", ["deep-before-suture", "patient-is-told", "stay-in-the-wound"])
def test_the_command_it_prints_replays_the_walk(name: str, capsys: Said, tmp_path: Path) -> None:
    typed(LIBRARY, "leaking-wound", "--rule", name)
    told = capsys.readouterr().out
    command = next(line for line in told.splitlines() if line.startswith("  Replay:   "))
    assert run(shlex.split(command)[2:]) == Status.CLEAN
    replayed = one_line(capsys.readouterr().out)
    assert "Here a rule breaks: " in replayed
    assert "The replay ends here." in replayed
    assert not (tmp_path / "home").exists()


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("    at most: 2\n    after that: suture\n", "", "loop-without-bound"),
        ("      flat: refer\n", "", "answers-do-not-cover"),
        ("    not known: ask-depth\n", "", "branch-cannot-decide"),
    ],
)
def test_what_keeps_a_walk_from_ending_well_is_told_first(
    old: str, new: str, code: str, library: Path, capsys: Said
) -> None:
    edit(library / "leaking-wound.yaml", old, new)
    words = ("leaking-wound", "--rule", "asked-before-hydrating")
    assert typed(library, *words) == Status.FINDINGS
    said = capsys.readouterr().out
    assert f"[{code}]" in said
    assert said.index(f"[{code}]") < said.index("1 rule: 1 holds.")
    typed(library, *words, "--format", "json")
    assert [each["code"] for each in json.loads(capsys.readouterr().out)["problems"]] == [code]


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("start: first-look", "start: nowhere", "no-entry"),
        ("of: hydrate-wound, at most", "of: hydrate-woun, at most", "hydrate-woun"),
        ("stale: leak}", "stale: leek}", "leek"),
        ("severity: minor", "severity: dire", "dire"),
    ],
)
def test_what_cannot_be_walked_is_not_proved(
    old: str, new: str, said: str, library: Path, capsys: Said
) -> None:
    edit(library / "leaking-wound.yaml", old, new)
    assert typed(library, "leaking-wound") == Status.UNUSABLE
    told = capsys.readouterr()
    assert told.out == ""
    assert said in told.err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("leaking-woun",), "Did you mean `leaking-wound`?"),
        (("--rule", "patient-is-tolt"), "Did you mean `patient-is-told`?"),
        (("--every", "3"), "Add --mutants"),
        (("--mutants", "--rule", "patient-is-told"), "Leave --rule or --mutants out"),
        ((str(LIBRARY / "vocabulary" / "rules.yaml"),), "holds no pathway"),
        ((str(LIBRARY / "none.yaml"),), "There is no file"),
    ],
)
def test_what_cannot_be_proved_says_why(words: tuple[str, ...], said: str, capsys: Said) -> None:
    assert typed(LIBRARY, *words) == Status.UNUSABLE
    told = capsys.readouterr()
    assert told.out == ""
    assert said in told.err


def test_a_folder_without_pathways_has_nothing_to_prove(tmp_path: Path, capsys: Said) -> None:
    assert typed(tmp_path) == Status.UNUSABLE
    assert "nothing to prove" in capsys.readouterr().err


@pytest.mark.parametrize("every", ["0", "-1", "two", "²"])
def test_a_sample_is_a_number(every: str, capsys: Said) -> None:
    with pytest.raises(SystemExit) as end:
        typed(LIBRARY, "--mutants", "--every", every)
    assert end.value.code == Status.UNUSABLE
    assert "is no number of 1 or more" in capsys.readouterr().err


def test_a_list_of_reviewed_mutants_that_cannot_be_read_says_why(
    library: Path, capsys: Said
) -> None:
    (library / "mutants").mkdir()
    (library / "mutants" / "restless-patient.yaml").write_text("reviewed: [")
    assert typed(library, "restless-patient", "--mutants") == Status.UNUSABLE
    said = capsys.readouterr()
    assert said.out == ""
    assert "restless-patient.yaml:2:1: error" in said.err


@pytest.mark.parametrize(("reason", "status"), [(None, 1), ("Said at once.", 0)])
def test_a_survivor_on_no_list_is_a_finding(
    reason: str | None, status: int, capsys: Said, monkeypatch: pytest.MonkeyPatch, library: Path
) -> None:
    def measured(loaded: object, pathway: str, *, every: int, told: object) -> Strength:
        survivor = Survivor("swap/a", "swap two steps", "Swap `a` and `b`.", reason)
        kinds = (OfKind("swap two steps", 10, 9),)
        return Strength(pathway, 10 * every, kinds, {"trapped": 9}, (survivor,))

    monkeypatch.setattr("chamberwise.engine.mutants.measure.measure", measured)
    rules = library / "vocabulary" / "rules.yaml"
    rules.write_text("vocabulary: None\n")
    words = ("restless-patient", "--mutants", "--every", "5")
    assert typed(library, *words) == status
    said = capsys.readouterr()
    assert "10 mutants, 9 killed (90.0 %); a sample, 1 of every 5, of 50." in one_line(said.out)
    assert (reason or "UNLISTED") in said.out
    assert "Measuring `restless-patient`" in said.err
    assert typed(library, *words, "--format", "json") == status
    assert json.loads(capsys.readouterr().out)["mutants"][0]["by"] == {"trapped": 9}


def test_a_pathway_is_proved_with_those_that_come_through_it(capsys: Said) -> None:
    assert run(["prove", "anterior-vitrectomy", "--rule", "fill-before-tip-leaves"]) == Status.CLEAN
    out = capsys.readouterr().out
    assert "(posterior-capsule-rupture," in out
    assert "(closing-and-after-care," in out
    assert run(["prove", "posterior-capsule-rupture", "--rule", "fill-before-tip-leaves"]) == 0
    assert "(anterior-vitrectomy," not in capsys.readouterr().out
