"""Numbers of the audit against published ones; the source stands beside each."""

from __future__ import annotations

import pytest
from chamberwise.exports.audit.colour.contrast import contrast
from chamberwise.exports.audit.colour.lightness import lightness
from chamberwise.exports.audit.colour.vision import Sight, difference
from chamberwise.exports.audit.rules.flow.crossings import most_crossings
from chamberwise.exports.audit.rules.legibility.stroke_width import least_stroke
from chamberwise.exports.audit.rules.printing.page_size import tolerance
from chamberwise.exports.legibility.angle import angle
from chamberwise.exports.paper.sizes import Paper, Sized
from coloraide import Color

OKABE_ITO = (  # Okabe and Ito, Color Universal Design, eight colours less grey
    "#000000",
    "#e69f00",
    "#56b4e9",
    "#009e73",
    "#f0e442",
    "#0072b2",
    "#d55e00",
    "#cc79a7",
)


@pytest.mark.parametrize(
    ("first", "second", "ratio"),
    [
        ("#000000", "#ffffff", 21.00),  # WCAG 2.2, definition of contrast ratio: 1 to 21
        ("#ffffff", "#ffffff", 1.00),  # the same
        ("#767676", "#ffffff", 4.54),  # WCAG 2, lightest grey that passes 1.4.3 on white
        ("#777777", "#ffffff", 4.48),  # its neighbour, which fails
        ("#595959", "#ffffff", 7.00),  # WCAG 2, lightest grey that passes 1.4.6 on white
        ("#949494", "#ffffff", 3.03),  # WCAG 2, lightest grey that passes 1.4.11 on white
        ("#ff0000", "#ffffff", 4.00),  # WCAG 2 working sample: pure red on white fails
        ("#9b2423", "#ffffff", 7.86),  # ISO 3864-4 red, RAL 3001 approximated
        ("#000000", "#f9a800", 10.63),  # ISO 3864-4 yellow, RAL 1003 approximated
    ],
)
def test_contrast(first: str, second: str, ratio: float) -> None:
    assert round(contrast(first, second), 2) == pytest.approx(ratio, abs=0.005)
    assert contrast(first, second) == contrast(second, first)


@pytest.mark.parametrize(
    ("millimetres", "minutes"),
    [  # table of letter heights a metre away, h = 2 D tan(a/2); NUREG-0700 gives 9.31 at 2 m
        (3.49, 12),
        (4.65, 16),
        (5.82, 20),
        (6.40, 22),
        (6.98, 24),
        (9.02, 31),
    ],
)
def test_visual_angle(millimetres: float, minutes: float) -> None:
    assert angle(millimetres, 1000) == pytest.approx(minutes, abs=0.02)


def test_visual_angle_of_published_pairs() -> None:
    assert angle(9.31, 2000) == pytest.approx(16.0, abs=0.01)  # NUREG-0700, worked example
    assert angle(3.2, 500) == pytest.approx(22, abs=0.05)  # ASR A6: 3.2 mm at 500 mm, 22 minutes


def test_stroke_width() -> None:
    assert least_stroke(3000) == pytest.approx(1.74)  # Howett 1983, 6/12 at 3 m


@pytest.mark.parametrize(
    ("colour", "light"),
    [("#9b2423", 34.7), ("#005387", 33.8), ("#e69f00", 70.6), ("#56b4e9", 69.8)],
)
def test_lightness_agrees_with_another_program(colour: str, light: float) -> None:
    assert round(lightness(colour), 1) == light
    # Its white point is rounded otherwise, hence the tolerance.
    assert Color(colour).convert("lab-d65")["l"] == pytest.approx(lightness(colour), abs=0.01)


def worst(sight: Sight) -> float:
    return min(
        difference(one, other, sight)
        for place, one in enumerate(OKABE_ITO)
        for other in OKABE_ITO[place + 1 :]
    )


@pytest.mark.parametrize(
    ("sight", "least"),
    [
        (Sight("protan", "brettel"), 13.0),
        (Sight("protan", "machado"), 12.2),
        (Sight("deutan", "brettel"), 11.7),
        (Sight("deutan", "machado"), 11.6),
        (Sight("tritan", "brettel"), 7.9),
    ],
)
def test_the_colours_of_okabe_and_ito_stay_apart(sight: Sight, least: float) -> None:
    assert worst(sight) == pytest.approx(least, abs=0.15)


def test_plain_red_and_green_fall_together() -> None:
    for method in ("brettel", "vienot", "machado"):
        assert difference("#cc0000", "#008000", Sight("deutan", method)) < 10
    assert difference("#cc0000", "#008000") > 20


def test_machado_matrix_row() -> None:
    """Machado, Oliveira and Fernandes 2009, protan at severity 1, first row."""
    row = [
        Color("srgb-linear", primary).filter("protan", method="machado")["r"]
        for primary in ([1, 0, 0], [0, 1, 0], [0, 0, 1])
    ]
    assert row == pytest.approx([0.152286, 1.052583, -0.204868], abs=1e-6)


def test_paper_sizes() -> None:
    """ISO 216, A series; tolerances 1.5, 2 and 3 mm."""
    sizes = {each: tuple(Sized(each).format) for each in Paper}
    assert sizes == {
        Paper.A4: (210, 297),
        Paper.A3: (297, 420),
        Paper.A2: (420, 594),
        Paper.A1: (594, 841),
    }
    assert [tolerance(side) for side in (150, 151, 600, 601)] == [1.5, 2.0, 2.0, 3.0]


class Degrees:
    """A chart of which only edges and degrees are known."""

    links = (None,) * 12
    degrees = (1, 3, 3, 2, 2, 3, 2, 2, 2, 2, 1, 1)


def test_most_crossings() -> None:
    """Purchase 2002: twelve edges on these degrees can cross 51 times."""
    assert most_crossings(Degrees()) == 51  # type: ignore[arg-type]
