"""The digest of what is printed: what counts, and what does not."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from chamberwise.engine.reading.library import load_library
from chamberwise.engine.stamp.content import content_digest

FROM = Path(__file__).parents[2] / "exports" / "proof" / "library"
PATHWAY = "leaking-wound"
OTHER = "restless-patient"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return shutil.copytree(FROM, tmp_path / "library")


def digest(folder: Path, pathway: str = PATHWAY) -> str:
    return content_digest(load_library(folder).library, pathway)


def edit(path: Path, old: str, new: str) -> None:
    text = path.read_text()
    assert old in text
    path.write_text(text.replace(old, new, 1))


def test_the_same_content_elsewhere_has_the_same_digest(folder: Path) -> None:
    assert digest(folder) == digest(FROM)
    assert digest(folder) != digest(folder, OTHER)


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        ("leaking-wound.yaml", "edition: 0.2", "edition: 0.3"),
        ("leaking-wound.yaml", "at most: 2", "at most: 3"),
        ("leaking-wound.yaml", "review by: 2027", "review by: 2028"),
        ("restless-patient.yaml", "title: Restless patient", "title: Sore patient"),
        ("vocabulary/words.yaml", "{title: Surgeon}", "{title: Operator}"),
        ("vocabulary/words.yaml", "sign: A dry sponge stays dry", "sign: It stays dry"),
    ],
)
def test_what_is_printed_counts_handovers_and_shared_words_too(
    folder: Path, file: str, old: str, new: str
) -> None:
    before = digest(folder)
    edit(folder / file, old, new)
    assert digest(folder) != before


def test_comments_rules_and_words_nobody_uses_do_not(folder: Path) -> None:
    before = digest(folder)
    (folder / "leaking-wound.yaml").write_text(
        "# A comment.\n" + (folder / "leaking-wound.yaml").read_text()
    )
    (folder / "vocabulary" / "rules.yaml").unlink()
    (folder / "vocabulary" / "more.yaml").write_text(
        "vocabulary: more\nduties:\n  porter: {title: Porter}\n"
    )
    loaded = load_library(folder)
    assert "porter" in loaded.library.shared.duties
    assert digest(folder) == before


def test_another_pathway_does_not_count_unless_it_is_handed_over_to(folder: Path) -> None:
    before = digest(folder, OTHER)
    edit(folder / "leaking-wound.yaml", "at most: 2", "at most: 3")
    assert digest(folder, OTHER) == before
