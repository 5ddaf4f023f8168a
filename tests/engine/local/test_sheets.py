"""Thirty-three sheets, good, stale, contradictory and hostile: each verdict at its line."""

from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.local.localising import localised
from chamberwise.engine.reading.library import read_file

from tests.engine.local.stage import SHEETS, below, problems, said

CARRIED_OUT = ("names-nothing", "no-such-language", "base-changed")
"""Errors that keep nothing of the sheet from being carried out."""
each_sheet = pytest.mark.parametrize("path", SHEETS, ids=[path.stem for path in SHEETS])


def test_there_are_thirty_three() -> None:
    assert len(SHEETS) == 33


@each_sheet
def test_every_verdict_stands_at_its_line_and_there_is_no_other(path: Path) -> None:
    file = read_file(path)
    expected = said(file.text)
    found = problems(file)
    assert {each.file for each in found} <= {file.shown_as}
    told = [(each.span.line if each.span else 0, each.code, each.message) for each in found]
    unmet = [
        (line, code, part)
        for line, code, part in expected
        if not any(each[:2] == (line, code) and part in each[2] for each in told)
    ]
    assert unmet == [], told
    assert len(told) == len(expected), told


@each_sheet
def test_a_sheet_with_an_error_is_not_carried_out_and_any_other_is(path: Path) -> None:
    file = read_file(path)
    loaded = localised(below(), file)
    of_the_sheet = [
        each
        for each in loaded.files[file.shown_as].problems
        if each.severity is Severity.ERROR and each.code not in CARRIED_OUT
    ]
    assert (loaded.library.local is None) == bool(of_the_sheet)


@pytest.mark.parametrize(
    ("written", "slug"),
    [
        (b"local sheet: [", "yaml-syntax"),
        (b"local sheet: &a x\nunit: *a\n", "alias-refused"),
        (b"local sheet: x\nunit: caf\xe9\n", "not-text"),
        ("local sheet: x\nunit: a\u202eb\n".encode(), "hidden-character"),
        (b"<<<<<<< ours\nlocal sheet: x\n=======\nlocal sheet: y\n>>>>>>> b\n", "merge-conflict"),
        (b"local sheet: x\nunit: a\nunit: b\n", "duplicate-key"),
        (b"local sheet: x\nwording: " + b"[" * 40 + b"]" * 40 + b"\n", "too-deep"),
        (b"local sheet:\n", "wrong-value"),
        (b"local sheet: x\nchanges: [1, {change: }]\n", "wrong-kind"),
        (b"local sheet: x\nover: {pathway: no-such}\n", "no-base"),
    ],
)
def test_hostile_bytes_are_refused_and_never_a_traceback(
    written: bytes, slug: str, tmp_path: Path
) -> None:
    path = tmp_path / "x.yaml"
    path.write_bytes(written)
    file = read_file(path)
    loaded = localised(below(), file)
    assert slug in {each.code for each in loaded.files[file.shown_as].problems}
    assert loaded.library.local is None
    assert loaded.library.pathways == below().library.pathways
