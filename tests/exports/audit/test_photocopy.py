"""A copy of black and white alone is judged with the copier set light, as usual and dark."""

from __future__ import annotations

import pytest
from chamberwise.exports.audit.geometry import Box
from chamberwise.exports.audit.printed.content import Leaf, Pixels
from chamberwise.exports.audit.rules.colour.photocopy import LEAST, share_of_lesser


def striped(ink: int, ground: int) -> float:
    """Return what is left of every fifth row of ink on a ground, at a pixel a millimetre."""
    rows = b"".join(bytes([ground if row % 5 else ink]) * 50 for row in range(50))
    leaf = Leaf(50, 50, (), (), 0, Pixels(rows), 50)
    return share_of_lesser(leaf, Box(5, 5, 44, 44))


@pytest.mark.parametrize(("ink", "ground"), [(0, 255), (0, 230), (40, 240), (255, 60)])
def test_what_stands_far_apart_stays_at_every_setting(ink: int, ground: int) -> None:
    assert striped(ink, ground) == pytest.approx(0.2, abs=0.02)


@pytest.mark.parametrize(
    ("ink", "ground"),
    [(0, 170), (110, 255), (255, 120)],
    ids=["a ground that a dark copy blackens", "words that a light copy loses", "white on a tint"],
)
def test_what_one_setting_loses_is_lost(ink: int, ground: int) -> None:
    assert LEAST.warning is not None
    assert striped(ink, ground) < LEAST.warning
