"""A year in which two people edit the same pathways, each edit on top of all before it: every one

is told, and told as grave as it has to be. Ratings by what a team would do otherwise: common
practice of change control, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from chamberwise.engine.comparing.change import Rating
from chamberwise.engine.reading.library import Loaded, assemble, read_text

from tests.engine.comparing.shipped import FOLDER, changes_between, shipped

NOTHING = "nothing"
YEAR: list[dict[str, Any]] = yaml.safe_load(
    (Path(__file__).parent / "a_year_replayed.yaml").read_text(encoding="utf-8")
)


def _edited(texts: dict[str, str], edit: dict[str, Any]) -> dict[str, str]:
    """Return every file after an edit; one that names a pathway anew bears its name too."""
    anywhere = edit["file"] == "*"
    names = [name for name in texts if anywhere or name == edit["file"]]
    found = sum(texts[name].count(edit["was"]) for name in names)
    assert found == 1 or (found and edit.get("every")), (edit["what"], found)
    changed = {name: texts[name].replace(edit["was"], edit["now"]) for name in names}
    edited = {**texts, **changed}
    if not anywhere:
        return edited
    return {name.replace(edit["was"], edit["now"]): text for name, text in edited.items()}


def _read(texts: dict[str, str], before: Loaded) -> Loaded:
    files = [
        before.files[name]
        if name in before.files and before.files[name].text == text
        else read_text(text, name)
        for name, text in texts.items()
    ]
    assert all(each.is_whole for each in files)
    return assemble(files)


def _replayed() -> Iterator[tuple[dict[str, Any], Loaded, Loaded]]:
    texts = {
        Path(name).resolve().relative_to(FOLDER).as_posix(): file.text
        for name, file in shipped().files.items()
    }
    before = _read(texts, shipped())
    for edit in YEAR:
        texts = _edited(texts, edit)
        after = _read(texts, before)
        yield edit, before, after
        before = after


def _grave(old: Loaded, new: Loaded) -> str:
    found = changes_between(old, new)
    return found[0].rating if found else NOTHING


@pytest.mark.parametrize("way", ["on", "back"])
def test_nothing_drifts_and_nothing_is_called_graver_than_it_is(way: str) -> None:
    told, wanted = {}, {}
    for edit, before, after in _replayed():
        sides = (before, after) if way == "on" else (after, before)
        wanted[edit["what"]] = edit["rating"]
        told[edit["what"]] = _grave(*sides)
    if way == "on":
        assert told == wanted
    else:
        assert _safety(told) == _safety(wanted)
        assert [what for what in told if told[what] == NOTHING] == [
            what for what in wanted if wanted[what] == NOTHING
        ]


def _safety(ratings: dict[str, str]) -> list[str]:
    return [what for what, rating in ratings.items() if rating == Rating.SAFETY]


def test_the_whole_year_at_once_is_as_grave_as_its_gravest_edit() -> None:
    *_, (_edit, _before, last) = _replayed()
    assert _grave(shipped(), last) == Rating.SAFETY
