"""A word of forty letters, as German makes them, is parted: not cut off, nor made unreadable.

The compounds are made up. Where a word may be parted is told by the patterns of the program that
prints.
"""

from __future__ import annotations

from datetime import date
from functools import cache
from pathlib import Path
from shutil import copytree

import pytest
from chamberwise.exports.audit.printed.read import read
from chamberwise.exports.audit.rules.legibility import alignment
from chamberwise.exports.paper.sheet import Page, Role, Run, Sheet, Style, Text
from chamberwise.exports.paper.sizes import Paper, Sized
from chamberwise.exports.printing.auditing import audited
from chamberwise.exports.printing.kind import Kind
from chamberwise.exports.printing.printing import Laid
from chamberwise.exports.typesetting.compiling import to_pdf
from chamberwise.exports.typesetting.measuring import Room, Ruler, Setting

from tests.exports.printing.printing_alone import laid

HERE = Path(__file__).parent
COMPOUND = "Hinterkapselrupturvitrektomiebesteckkasten"
OTHER = "Ersatzlampenaufbewahrungsschubladenschild"
CHANGED = {
    "dim-lamp.yaml": (
        ("short: Hold still and call", f"short: Hold the {COMPOUND} and call"),
        ("question: How is the lamp?", f"question: How is the {COMPOUND}?"),
        ("does: Change the lamp.", f"does: Change the {OTHER}."),
    ),
}


@cache
def ruler() -> Ruler:
    return Ruler()


@pytest.fixture(scope="module")
def sheets(tmp_path_factory: pytest.TempPathFactory) -> tuple[Laid, ...]:
    folder = tmp_path_factory.mktemp("long") / "library"
    copytree(HERE / "frozen", folder)
    for name, changes in CHANGED.items():
        text = (folder / name).read_text("utf-8")
        for old, new in changes:
            assert old in text
            text = text.replace(old, new)
        (folder / name).write_text(text, "utf-8")
    words = folder / "vocabulary" / "words.yaml"
    labelled = words.read_text("utf-8").replace("label: Bright", f"label: {COMPOUND}")
    assert COMPOUND in labelled
    words.write_text(labelled, "utf-8")
    return laid(folder, "dim-lamp")


@pytest.mark.parametrize("kind", list(Kind))
def test_every_kind_of_sheet_takes_it_without_an_error(
    sheets: tuple[Laid, ...], kind: Kind
) -> None:
    """The audit measures the finished file: room in boxes, overlaps, margins, all letters kept."""
    (one,) = (each for each in sheets if each.kind is kind)
    (report,) = audited((one,)).reports
    assert [each for each in report.errors if each.rule != "CON-03"] == []


def test_it_is_parted_only_where_its_place_is_narrower() -> None:
    wide, narrow = (room(COMPOUND, width) for width in (120.0, 40.0))
    assert wide.height < 5
    assert narrow.height > 10
    assert narrow.longest <= 40.0 < wide.longest


@pytest.mark.parametrize("word", ["Vitrektomie", "preservative-free", COMPOUND])
def test_what_cannot_be_parted_is_told_as_too_wide(word: str) -> None:
    """Then the room refuses the paper or takes smaller letters; nothing runs out of its box."""
    assert room(word, 8.0).longest > 8.0


def test_a_word_that_is_not_long_may_not_be_parted() -> None:
    parted = alignment._is_of_a_long_word
    assert parted("the Hinterkapselrup-", "turvitrektomiebesteckkasten", [COMPOUND])
    assert parted("rupturvitrek-", "tomiebesteck-", [COMPOUND])
    assert not parted("a vitrec-", "tomy is", ["vitrectomy", COMPOUND])


def room(text: str, width: float) -> Room:
    return ruler()(Setting((Run(text),), Style(12), width))


def test_a_parted_word_keeps_its_last_four_letters_together() -> None:
    """The German patterns alone would part off "es", the last two letters."""
    word = "Konservierungsmittelfreies"
    style = Style(10)
    all_but_two = Setting((Run(word[:-2] + "-"),), style, 1000)
    width = Ruler(language="de")(all_but_two).width + 0.5
    page = Page(Sized(Paper.A4).format, (Text(20, 20, width, 30, (Run(word),), style, Role.NOTE),))
    pdf = to_pdf(Sheet("Wort", "Wort", "de", date(2026, 11, 25), (page,)))
    (leaf,) = read(pdf).leaves
    assert "".join(each.text for each in leaf.stretches) == "Konservierungsmittel-freies"
