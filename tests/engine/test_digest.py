"""The digest changes when, and only when, something changes that a walk can come to."""

from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.engine.reading.digest import digest, reached_by_handover
from chamberwise.engine.reading.library import load_library

TITLE = "title: A"


def text(name: str, hands_over_to: str = "") -> str:
    over = f"\n  over:\n    hand over to: {hands_over_to}\n    says: Over.\n    phase: a\n"
    return (
        f"pathway: {name}\n{TITLE}\nstart: over\nsteps:{over}"
        if hands_over_to
        else (
            f"pathway: {name}\n{TITLE}\nstart: done\nsteps:\n  done: {{outcome: Done, phase: a}}\n"
        )
    )


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "vocabulary").mkdir()
    (tmp_path / "vocabulary" / "words.yaml").write_text("vocabulary: Words\n")
    (tmp_path / "first.yaml").write_text(text("first", "second"))
    (tmp_path / "second.yaml").write_text(text("second", "third"))
    (tmp_path / "third.yaml").write_text(text("third"))
    (tmp_path / "aside.yaml").write_text(text("aside"))
    return tmp_path


def of(folder: Path, pathway: str = "first") -> str:
    return digest(load_library(folder), pathway)


def change(path: Path) -> None:
    path.write_text(path.read_text() + "# changed\n")


def test_it_is_the_same_read_again(folder: Path) -> None:
    assert of(folder) == of(folder)
    assert len(of(folder)) == 64


@pytest.mark.parametrize("name", ["first.yaml", "second.yaml", "third.yaml"])
def test_it_changes_with_every_pathway_a_walk_can_come_to(folder: Path, name: str) -> None:
    before = of(folder)
    change(folder / name)
    assert of(folder) != before


def test_it_changes_with_the_shared_words(folder: Path) -> None:
    before = of(folder)
    change(folder / "vocabulary" / "words.yaml")
    assert of(folder) != before


def test_it_does_not_change_with_a_pathway_no_walk_comes_to(folder: Path) -> None:
    before = of(folder)
    change(folder / "aside.yaml")
    (folder / "new.yaml").write_text(text("new"))
    assert of(folder) == before
    assert of(folder, "third") != of(folder, "aside")


def test_it_does_not_depend_on_where_the_folder_is_or_on_line_ends(
    folder: Path, tmp_path_factory: pytest.TempPathFactory
) -> None:
    elsewhere = tmp_path_factory.mktemp("elsewhere")
    (elsewhere / "vocabulary").mkdir()
    for path in [*folder.glob("*.yaml"), *folder.glob("vocabulary/*.yaml")]:
        windows = path.read_text().replace("\n", "\r\n").encode()
        (elsewhere / path.relative_to(folder)).write_bytes(windows)
    assert of(elsewhere) == of(folder)


def test_moving_a_line_from_one_file_to_the_next_changes_it(folder: Path) -> None:
    first, second = folder / "first.yaml", folder / "second.yaml"
    first.write_text(first.read_text() + "# a remark\n")
    before = of(folder)
    first.write_text(first.read_text().removesuffix("# a remark\n"))
    second.write_text("# a remark\n" + second.read_text())
    assert of(folder) != before


def test_pathways_are_reached_over_others_each_once(folder: Path) -> None:
    library = load_library(folder).library
    assert reached_by_handover(library, "first") == ("first", "second", "third")
    assert reached_by_handover(library, "third") == ("third",)
