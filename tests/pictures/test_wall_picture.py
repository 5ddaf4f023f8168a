from __future__ import annotations

from chamberwise.exports.printing.marking import MARK, is_ours

from tests.pictures.wall_picture import PICTURE, WIDTH, picture

PORTRAIT = 2**0.5


def is_upright_and_wide_enough(png: bytes) -> bool:
    width, height = int.from_bytes(png[16:20]), int.from_bytes(png[20:24])
    return abs(width - WIDTH) <= 1 and abs(height / width - PORTRAIT) < 0.01


def test_the_picture_is_a_wall_chart_with_its_stamp() -> None:
    made = picture()
    assert is_upright_and_wide_enough(made)
    assert f"{MARK}wall chart, stamp ".encode() in made


def test_the_picture_of_the_readme_is_one_of_ours() -> None:
    assert is_ours(PICTURE)
    assert is_upright_and_wide_enough(PICTURE.read_bytes())
