"""A fault in a drill file is found where it stands, with its line, and what to do next."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from chamberwise.engine.drill.checking.check import check_drills
from chamberwise.engine.reading.drills import read_drills
from chamberwise.engine.reading.library import load_library

from tests.engine.drill.stage import PROTOCOLS, RUPTURE, shipped

FAULTS = [
    ("truth.yaml", "counts as: phaco-fragment", "counts as: phaco-fragmnt", "drill-name"),
    ("truth.yaml", "since: [withdraw-cutter]", "since: [no-such-act]", "drill-name"),
    ("truth.yaml", "becomes: {comfort: comfortable}", "becomes: {comfort: happy}", "drill-name"),
    ("phrases.yaml", "  hold-tip-still:", "  hold-tip-stil:", "drill-name"),
    (f"{RUPTURE}.yaml", "act: call-for-help, soft", "act: call-for-hlp, soft", "drill-name"),
    (f"{RUPTURE}.yaml", "or: [surgeon]", "or: [surgon]", "drill-name"),
    (f"{RUPTURE}.yaml", "opening: nucleus", "opening: nuclus", "drill-name"),
    (f"{RUPTURE}.yaml", "ends at: [by-nucleus, is-", "ends at: [by-nuclus, is-", "drill-name"),
    (
        f"{RUPTURE}.yaml",
        "A bubble drifts across the pupil.",
        "The capsule has gone.",
        "drill-tells",
    ),
    (f"{RUPTURE}.yaml", "begins at: look-at-the-rim", "begins at: prepared", "drill-no-end"),
    (f"{RUPTURE}.yaml", "lasts: 300 s", "lasts: 300", "wrong-value"),
    (f"{RUPTURE}.yaml", "weight: 14", "wieght: 14", "unknown-key"),
    (f"{RUPTURE}.yaml", "drill of: posterior", "drill of: anterior", "file-name"),
]


def problems(folder: Path) -> list[tuple[str, str, int]]:
    found = check_drills(shipped()[0], read_drills(folder), [RUPTURE])
    return [(each.code, Path(each.file).name, each.span.line if each.span else 0) for each in found]


def test_what_is_shipped_is_clean() -> None:
    loaded, drills = shipped()
    assert check_drills(loaded, drills, drills.books) == []


def test_what_needs_walks_waits_for_a_pathway_that_can_be_walked(tmp_path: Path) -> None:
    folder = Path(shutil.copytree(PROTOCOLS, tmp_path / "protocols"))
    file = folder / f"{RUPTURE}.yaml"
    text = file.read_text("utf-8")
    file.write_text(text.replace("go to: fill-chamber", "go to: fill-chambr", 1), "utf-8")
    assert check_drills(load_library(folder), read_drills(folder), [RUPTURE]) == []


@pytest.mark.parametrize(("name", "right", "wrong", "code"), FAULTS, ids=[f[2] for f in FAULTS])
def test_a_fault_is_found_on_its_line(
    tmp_path: Path, name: str, right: str, wrong: str, code: str
) -> None:
    shutil.copytree(PROTOCOLS / "drills", tmp_path / "drills")
    file = tmp_path / "drills" / name
    text = file.read_text("utf-8")
    assert right in text
    file.write_text(text.replace(right, wrong, 1), "utf-8")
    line = text[: text.index(right)].count("\n") + 1
    found = problems(tmp_path)
    assert found, wrong
    assert all(each[1] == name for each in found)
    assert code in {each[0] for each in found}
    if code not in ("drill-no-end", "wrong-value"):
        assert (code, name, line) in found


def test_a_wrong_act_that_leads_to_nothing_is_found(tmp_path: Path) -> None:
    shutil.copytree(PROTOCOLS / "drills", tmp_path / "drills")
    file = tmp_path / "drills" / "truth.yaml"
    text = file.read_text("utf-8")
    start = text.index("  press-on-the-eye:\n    turns:")
    end = text.index("  chase-falling-piece:\n    turns:")
    file.write_text(text[:start] + text[end:], "utf-8")
    assert [each[0] for each in problems(tmp_path)] == ["drill-no-consequence"]


@pytest.mark.parametrize("data", [b"", b"\xff\xfe", b"a: [", b"drill of: x\n" * 9, b"- 1\n"])
def test_hostile_files_are_told_never_raised(tmp_path: Path, data: bytes) -> None:
    for name in ("truth.yaml", "phrases.yaml", f"{RUPTURE}.yaml"):
        folder = tmp_path / name
        shutil.copytree(PROTOCOLS / "drills", folder / "drills")
        (folder / "drills" / name).write_bytes(data)
        assert read_drills(folder).problems
