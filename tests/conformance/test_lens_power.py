"""Lens power against published rows; where each comes from stands in `lens_figures`."""

from __future__ import annotations

from decimal import Decimal

import pytest
from chamberwise.engine.working.optics.formulas import FORMULAS, constant_from_a

from tests.conformance import lens_figures as figures
from tests.conformance.lens_figures import Row
from tests.conformance.working_out import eye, power, refusals, work


def told(row: Row) -> str:
    return f"{row.formula}-{row.length}-{row.cornea[:5]}-{row.constant}"


def of(row: Row) -> Decimal:
    return power(row.formula, row.length, row.cornea, **{row.symbol: row.constant})


@pytest.mark.parametrize("row", figures.SOLID, ids=told)
def test_a_row_of_the_test_set(row: Row) -> None:
    assert abs(of(row) - Decimal(row.expected)) <= Decimal("0.0101")


@pytest.mark.parametrize("row", figures.HOFFER[:3], ids=told)
def test_the_rows_with_five_decimals(row: Row) -> None:
    assert round(of(row), 5) == Decimal(row.expected)


@pytest.mark.parametrize(("length", "cornea", "constant", "depth"), figures.HOFFER_POSITIONS)
def test_where_hoffer_q_puts_the_lens(length: str, cornea: str, constant: str, depth: str) -> None:
    sheet = eye(length, cornea, pACD=constant)
    FORMULAS["hoffer-q"].position(sheet)
    assert round(sheet["C"], 5) == Decimal(depth)


def test_angles_of_hoffer_q_are_degrees() -> None:
    """Radians would put the lens at 3.782 mm (computed)."""
    sheet = eye("23.5", "43.5", pACD="4.5")
    FORMULAS["hoffer-q"].position(sheet)
    assert round(sheet["C"], 3) == Decimal("4.409")


@pytest.mark.parametrize("row", figures.FAIR, ids=told)
def test_a_row_of_an_article_that_cuts_decimals_off(row: Row) -> None:
    assert Decimal(0) <= of(row) - Decimal(row.expected) < Decimal("0.1")


def test_the_rejected_row_is_the_cell_of_another_formula() -> None:
    row = figures.REJECTED
    assert round(of(row), 2) == Decimal("83.53")
    hoffer = power("hoffer-q", row.length, row.cornea, pACD="4.97")
    assert round(hoffer, 2) == Decimal(row.expected)


def test_the_log_is_met_within_its_own_tolerance() -> None:
    assert round(of(figures.LOG), 2) == Decimal("21.81")
    assert abs(of(figures.LOG) - Decimal(figures.LOG.expected)) < Decimal("0.5")


@pytest.mark.parametrize(("length", "cornea", "constant", "right", "wrong"), figures.SHORT_EYES)
def test_the_sign_of_hoffer_q_in_short_eyes(
    length: str, cornea: str, constant: str, right: str, wrong: str
) -> None:
    found = round(power("hoffer-q", length, cornea, pACD=constant), 2)
    assert found == Decimal(right) != Decimal(wrong)


def test_hoffer_q_hardly_steps_at_23_millimetres() -> None:
    below, above = (power("hoffer-q", each, "44", pACD="5.5") for each in ("23", "23.000001"))
    assert round(below, 3) == Decimal("22.266")
    assert abs(below - above) < Decimal("0.003")


@pytest.mark.parametrize("row", figures.SIDE_BY_SIDE, ids=lambda row: row[0])
def test_formulas_side_by_side(row: tuple[str, ...]) -> None:
    length, cornea, *expected = row
    found = work("formula-spread", AL=length, K=cornea, A="118.7", target="0")
    assert [found.result(name) for name in FORMULAS] == [Decimal(each) for each in expected]
    spread = max(map(Decimal, expected)) - min(map(Decimal, expected))
    assert abs(found.result("spread") - spread) <= Decimal("0.01")
    warned = any("more than half a dioptre apart" in each for each in found.remarks)
    assert warned == (found.result("spread") > Decimal("0.5"))


@pytest.mark.parametrize(
    ("formula", "lens", "left"),
    [(name, lens, left) for name, lenses in figures.LEFT.items() for lens, left in lenses.items()],
)
def test_what_a_stocked_lens_leaves(formula: str, lens: str, left: str) -> None:
    found = work("nearest-lenses", formula=formula, A="118.7", target="0", stock=lens, exact=True)
    assert abs(found.result(f"{lens}-leaves") - Decimal(left)) < Decimal("0.0006")


@pytest.mark.parametrize(("lens", "left"), figures.LEFT_THIN.items())
def test_what_a_lens_leaves_by_vergence_alone(lens: str, left: str) -> None:
    found = work("refraction-left", lens=lens, exact=True).result("refraction")
    assert abs(found - Decimal(left)) < Decimal("0.0006")


@pytest.mark.parametrize(
    ("constant", "depth", "chamber", "factor"),
    [("118", "4.9641", "4.9653", "1.2234"), ("118.7", "5.4013", "5.3738", "1.6198")],
)
def test_constants_from_the_a_constant(
    constant: str, depth: str, chamber: str, factor: str
) -> None:
    """Conversions as in an open implementation (read), figures computed."""
    found = []
    for formula, symbol in (("srk-t", "D"), ("hoffer-q", "pACD"), ("holladay-1", "SF")):
        sheet = eye("23.5", "43.5", A=constant)
        constant_from_a(sheet, FORMULAS[formula])
        if formula == "srk-t":
            FORMULAS[formula].position(sheet)
        found.append(round(sheet[symbol], 4))
    assert found == [Decimal(depth), Decimal(chamber), Decimal(factor)]


def test_1_716_is_continuous_at_24_2_millimetres() -> None:
    below, above = (power("srk-t", each, "43", A="118.7") for each in ("24.2", "24.200001"))
    assert abs(below - above) < Decimal("0.01")


@pytest.mark.parametrize(
    ("length", "steep"), [("22", "53.4"), ("24", "50.0"), ("26", "48.3"), ("28", "47.0")]
)
def test_srk_t_tells_where_its_root_is_lost(length: str, steep: str) -> None:
    """Corneas from which there is no root (computed)."""
    for cornea, lost in ((Decimal(steep) - Decimal("0.2"), False), (Decimal(steep), True)):
        found = work("srk-t", AL=length, K=str(cornea))
        assert any("outside its physiological range" in each for each in found.remarks) == lost


def test_vergence_refuses_a_lens_at_the_retina() -> None:
    assert "the lens would lie at the retina" in refusals("lens-power", AL="15", ELP="7.5")


def test_the_vertex_hardly_matters_to_holladay_1() -> None:
    """At an aim of -2 D, 13 mm for 12 mm moves the power by 0.006 D (computed)."""
    found = []
    for vertex in ("12", "13"):
        sheet = eye("23.5", "43.5", "-2", SF="1.62")
        FORMULAS["holladay-1"].position(sheet)
        sheet.take("V", vertex)
        found.append(FORMULAS["holladay-1"].power(sheet))
    assert abs(found[0] - found[1]) < Decimal("0.0065")
