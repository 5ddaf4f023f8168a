"""What the audit or the sheets once got wrong: a case for each."""

from __future__ import annotations

from dataclasses import replace

import pytest
from chamberwise.exports.audit.audit import audit
from chamberwise.exports.audit.printed.read import read
from chamberwise.exports.audit.report import Report
from chamberwise.exports.audit.rule import Severity
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.control.lines import currency, identity
from chamberwise.exports.flow.block import Block, Group, plain
from chamberwise.exports.flow.far import far
from chamberwise.exports.flow.laying import lay
from chamberwise.exports.legibility.line import widest
from chamberwise.exports.paper.sheet import (
    Arrow,
    Item,
    Outline,
    Role,
    Shape,
    Style,
    Text,
    Tier,
)
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.printing.order import Kind
from chamberwise.exports.typesetting.measuring import Ruler

from tests.exports.audit.sheets import CONTROL, Case, step, text, wall


def reported(case: Case) -> Report:
    return audit(case.sheet, case.pdf, case.terms)


def found(case: Case, rule: str) -> list[tuple[Severity, str]]:
    return [(each.severity, each.where.text) for each in reported(case).of(rule)]


def diamond(width: float, words: str, x: float) -> Case:
    shape = Shape(Outline.DECISION, 200, 200, width, 40, of="p/r")
    return wall().and_also(shape, text(words, x, 217, 10, Role.QUESTION, of="p/r"))


def test_words_beyond_the_slant_of_a_diamond_are_out_of_it() -> None:
    assert found(diamond(120, "Deep?", 203), "FLO-16") == [(Severity.ERROR, "Deep?")]
    assert found(diamond(120, "Deep?", 254), "FLO-16") == []


@pytest.mark.parametrize("side", [8.6, 9.6, 12.0, 7.000000000000001])
def test_a_number_in_a_diamond_as_wide_as_high_is_inside(side: float) -> None:
    shape = Shape(Outline.DECISION, 200, 200, side, side, of="p/r")
    number = text("7", 200 + side / 2 - 1, 200 + side / 2 - 1.9, 9.2, Role.NUMBER, of="p/r")
    assert found(wall().and_also(shape, number), "FLO-16") == []


def test_a_way_out_within_its_own_box_lies_on_nothing() -> None:
    box = Shape(Outline.PROCESS, 200, 195, 100, 40, of="p/r")
    ring = Shape(Outline.CONNECTOR, 280, 210, 9, 9, of="p/r/on")
    within = Arrow(((270, 214.5), (280, 214.5)), 0.95, of="p/r/on")
    through = Arrow(((190, 230), (310, 230)), 0.95, of="p/r/off")
    assert found(wall().and_also(box, ring, within), "FLO-09") == []
    measured = [each.measured for each in reported(wall().and_also(box, ring, through)).found]
    assert 'an arrow through the box "p/r"' in measured


def asked_once(label: str) -> Case:
    """Return a chart with one more question, from which one arrow leads on."""
    return wall().and_also(
        Shape(Outline.DECISION, 200, 195, 60, 30, of="p/r"),
        text("How deep?", 218, 207, 10, Role.QUESTION, of="p/r"),
        Arrow(((230, 225), (230, 240)), 0.95, of="p/r/on"),
        text(label, 235, 228, 14, Role.ANSWER, of="p/r/on"),
    )


def test_a_question_asked_for_later_has_one_way_out_that_names_every_answer() -> None:
    assert found(asked_once("Shallow, deep, cannot tell"), "FLO-02") == []
    assert found(asked_once("Shallow"), "FLO-02") == [(Severity.ERROR, "p/r")]


def test_a_chart_without_first_actions_is_a_warning() -> None:
    without = tuple(
        replace(each, tier=Tier.ACT) if isinstance(each, Text) else each for each in wall().items
    )
    assert found(wall().with_items(without), "STR-04") == [(Severity.WARNING, "")]


def many(outline: Outline, kind: Kind) -> list[tuple[Severity, str]]:
    shapes: tuple[Item, ...] = tuple(
        Shape(outline, 200 + 7 * (place % 30), 200 + 7 * (place // 30), 5, 5, of=f"p/{place}")
        for place in range(60)
    )
    case = wall().and_also(*shapes)
    return found(replace(case, terms=replace(case.terms, kind=kind)), "FLO-05")


def test_connectors_are_no_boxes_and_the_full_pathway_is_read_by_number() -> None:
    assert many(Outline.CONNECTOR, Kind.WALL_CHART) == []
    assert many(Outline.PROCESS, Kind.WALL_CHART) == [(Severity.ERROR, "")]
    assert many(Outline.PROCESS, Kind.FULL) == [(Severity.WARNING, "")]


@pytest.mark.parametrize("end", ["250mg", "\u200b250mg"])
def test_an_address_is_not_read_as_a_dose(end: str) -> None:
    address = f"Label, example.org/acetazolamide-tablets-{end}"
    assert found(wall().and_also(text(address, 200, 215, 10, Role.NOTE)), "MED-03") == []
    dose = text(f"{address} and 250mg", 200, 215, 10, Role.NOTE)
    assert [severity for severity, _ in found(wall().and_also(dose), "MED-03")] == [Severity.ERROR]


@pytest.mark.parametrize("width", [120, 150, 186, 250])
def test_the_foot_parts_no_number_from_its_sign_and_no_name(width: float) -> None:
    assert "100\u00a0%" in currency(CONTROL, "")
    assert "posterior\u2011capsule\u2011rupture" in identity(CONTROL)
    sized = Sized(Paper.A4)
    page = Frame(Ruler(), CONTROL, sized.format).page((), 1, 1)
    items = tuple(
        replace(each, width=width) if isinstance(each, Text) else each for each in page.items
    )
    case = Case(
        replace(wall().sheet, pages=(replace(page, items=items),)),
        replace(wall().terms, kind=Kind.SCRIPT, sized=sized),
    )
    report = reported(case)
    assert report.of("MED-21") == report.of("DOC-01") == ()


@pytest.mark.parametrize("paper", list(Paper))
def test_words_in_a_wide_column_keep_lines_short(paper: Paper) -> None:
    width = Sized(paper, Turn.LANDSCAPE).format.width
    words = "Hold the tip still and keep the chamber full of viscoelastic. " * 6
    (laid,) = lay(Ruler(), [Group((Block(plain(words), Style(10)),))], width, 1e6)
    (placed,) = [each for each in laid.items if isinstance(each, Text)]
    assert placed.width == min(width, widest(10))
    assert placed.height == laid.height


def test_a_word_too_long_for_a_short_line_has_the_whole_column() -> None:
    (laid,) = lay(Ruler(), [Group((Block(plain("x" * 90), Style(10)),))], 400, 1e6)
    (placed,) = [each for each in laid.items if isinstance(each, Text)]
    assert placed.width == 400


def test_the_distance_is_rounded_down_and_told_of_what_is_to_be_done() -> None:
    small = replace(step("Cut the gel"), style=Style(10))
    smaller = replace(step("A remark"), style=Style(9.2), tier=Tier.REFER)
    assert far((small, smaller)) == "Read from up to 0.41\u00a0m."


def test_some_pages_of_a_file_are_read_as_they_are_alone() -> None:
    case = wall()
    first, second = case.sheet.pages[0], wall().and_also(step("Once more")).sheet.pages[0]
    both = Case(replace(case.sheet, pages=(first, second)), case.terms)
    whole, part = read(both.pdf), read(both.pdf, range(1, 2))
    assert part.leaves == whole.leaves[1:]
    assert part.seconds == whole.seconds[1:]
    one = replace(both.sheet, pages=(second,))
    report = audit(one, both.pdf, case.terms, first=1)
    assert {each.where.page for each in report.found} <= {0, 1}
    assert report.of("PRT-01") == report.of("PRT-06") == ()
