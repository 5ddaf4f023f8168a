"""Edits of the shipped pathways as two people make them in a year, each with the rating it has to

get. Ratings were set down before the comparison was run on them, by what a team would do otherwise:
common practice of change control, no source.
"""

from __future__ import annotations

from pathlib import Path
from typing import NamedTuple

import pytest
import yaml
from chamberwise.engine.comparing.change import Kind, Rating

from tests.engine.comparing.shipped import changes_between, shipped, text_of, with_text

HERE = Path(__file__).parent
LISTS = ("a_year_of_edits.yaml", "a_second_year_of_edits.yaml", "a_third_list_of_edits.yaml")
CLOSE = "closing-and-after-care.yaml"


class Edit(NamedTuple):
    rating: Rating
    what: str
    file: str
    was: str
    now: str


EDITS = [
    Edit(Rating(each["rating"]), *(each[key] for key in ("what", "file", "was", "now")))
    for name in LISTS
    for each in yaml.safe_load((HERE / name).read_text(encoding="utf-8"))
]
EXCHANGED = {
    "line ends": ("\n", "\r\n"),
    "a remark at every step": ("    phase: ", "    # Read.\n    phase: "),
    "room before a text": ("    why: ", "    why:   "),
    "keys in another order": (
        "    phase: clear\n    short: Stain for the last look\n",
        "    short: Stain for the last look\n    phase: clear\n",
    ),
    "a longer line": (" straight to closing\n ", " straight to closing"),
}
"""What means the same: what stands in a file, and how it may stand there as well."""


@pytest.mark.parametrize("edit", EDITS, ids=[f"{each.rating}: {each.what}" for each in EDITS])
def test_each_edit_is_rated_as_it_has_to_be(edit: Edit) -> None:
    text = text_of(edit.file)
    assert text.count(edit.was) == 1, text.count(edit.was)
    new = with_text(edit.file, text.replace(edit.was, edit.now))
    found = changes_between(shipped(), new)
    assert found
    assert found[0].rating is edit.rating, found
    back = changes_between(new, shipped())
    assert back
    assert (back[0].rating is Rating.SAFETY) == (edit.rating is Rating.SAFETY), back


@pytest.mark.parametrize("what", EXCHANGED)
def test_what_changes_only_the_file_changes_nothing(what: str) -> None:
    text = text_of(CLOSE)
    edited = text.replace(*EXCHANGED[what])
    assert edited != text
    assert not changes_between(shipped(), with_text(CLOSE, edited))


def test_a_step_that_stands_elsewhere_in_the_file_is_the_same_step() -> None:
    text = text_of(CLOSE)
    begins, ends = text.index("  last-stain:\n"), text.index("  where-is-vitreous-at-the-end:\n")
    elsewhere = text.index("  miotic:\n")
    moved = text[:elsewhere] + text[begins:ends] + text[elsewhere:begins] + text[ends:]
    (found,) = changes_between(shipped(), with_text(CLOSE, moved))
    assert (found.kind, found.rating) == (Kind.ORDER, Rating.EDITORIAL)
