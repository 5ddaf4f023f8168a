"""A text has the same room whatever is measured with it, and words are as wide alone as in it."""

from __future__ import annotations

import pytest
from chamberwise.exports.paper.sheet import Align, Run, Style, Weight
from chamberwise.exports.typesetting.guessing import Guess, Meeting
from chamberwise.exports.typesetting.measuring import Ruler, Setting, Word

STYLE = Style(11.0, pitch=1.25)
PLAIN = (Run("Keep the chamber full, then "), Run("withdraw the tip", Weight.BOLD), Run("."))
LONG = (Run("Die Hinterkapselruptur erkennen"),)
QUOTED = (Run('Say "stop" \\ wait\nthen {look} #again $1 [now]'),)
EVERY = [
    Setting(runs, style, width)
    for runs in (PLAIN, LONG, QUOTED)
    for style in (STYLE, Style(9.2, Weight.MEDIUM, align=Align.CENTRE))
    for width in (18.0, 40.0, 400.0)
]


def test_measured_together_each_has_the_room_it_has_alone() -> None:
    together = Ruler(language="de")
    together.measure(EVERY)
    for each in EVERY:
        assert together(each) == Ruler(language="de")(each)


def test_a_text_is_one_line_high_where_the_line_has_room_and_higher_where_not() -> None:
    ruler = Ruler()
    free = ruler(Setting(PLAIN, STYLE, 400.0))
    line = ruler(Setting((Run("n"),), STYLE, 400.0)).height
    for wider in (0.0, 0.005, 0.02, 1.0):
        assert ruler(Setting(PLAIN, STYLE, free.width + wider)).height == line
    assert ruler(Setting(PLAIN, STYLE, free.width - 0.05)).height > line
    assert free.height == line


def test_the_longest_word_is_as_wide_as_that_word_alone() -> None:
    ruler = Ruler()
    longest = ruler(Setting(PLAIN, STYLE, 40.0)).longest
    alone = ruler(Setting((Run("withdraw", Weight.BOLD),), STYLE, 400.0)).width
    assert longest == alone == ruler.widths[Word("withdraw", 11.0, Weight.BOLD)]


def test_what_is_known_is_not_asked_again(monkeypatch: pytest.MonkeyPatch) -> None:
    ruler = Ruler()
    ruler.measure(EVERY)
    known = dict(ruler.known)
    monkeypatch.setattr("chamberwise.exports.typesetting.measuring._asked", None)
    ruler.measure(EVERY)
    assert ruler.known == known


def test_a_guess_meets_the_words_that_are_said_each_in_its_weight() -> None:
    ruler = Ruler()
    guess = Guess(ruler)

    def say(meeting: Meeting) -> None:
        assert meeting(Setting(PLAIN, STYLE, 40.0)).longest == 0.0

    guess.meet(say)
    assert {("full,", Weight.REGULAR), ("tip", Weight.BOLD)} <= guess.widths.keys()
    assert ("tip", Weight.REGULAR) not in guess.widths
    assert ruler.known == {}
