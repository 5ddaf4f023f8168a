from __future__ import annotations

import pytest
from chamberwise.tui.present.arrange import arrange
from chamberwise.tui.present.parts import laid_out, text_lines
from chamberwise.tui.present.step_view import step_view

from tests.tui.stage import TODAY, walked

WAYS = [
    (),
    ("fast",),
    ("fast", "done"),
    ("fast", "done", "calm", "done"),
    ("fast", "done", "calm", "done", "none"),
]


@pytest.mark.parametrize("typed", WAYS)
@pytest.mark.parametrize(("width", "rows"), [(58, 12), (78, 17), (90, 34)])
def test_nothing_is_lost_at_any_size(typed: tuple[str, ...], width: int, rows: int) -> None:
    view = step_view(walked(typed), TODAY)
    found = arrange(view, width, rows)
    text = " ".join(" ".join(text_lines([*found.card, *found.body], 500)).split())
    for caution in view.cautions:
        assert caution.harm in text
        assert caution.instead in text
    for answer in view.answers:
        assert answer.label in text
        assert answer.sign in text
    assert all(line in text for line in view.passed)
    used = len(laid_out(found.card, width)) + len(laid_out(found.body, width))
    assert found.fits == (used <= rows)


def test_air_goes_first() -> None:
    view = step_view(walked(), TODAY)
    assert len(arrange(view, 78, 17).body) > len(arrange(view, 78, 12).body)


def test_the_card_leaves_room_for_the_answers() -> None:
    view = step_view(walked(("fast", "done", "calm", "done")), TODAY)
    found = arrange(view, 30, 9)
    assert text_lines(found.card, 30)[0].startswith("ASK")
    assert text_lines(found.body, 30)[0].startswith("CAUTION")
