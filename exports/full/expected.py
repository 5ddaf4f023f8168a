"""What must be found again in the finished file, stretch by stretch, as patterns without spaces."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.full.cautions import caution_runs, signal_word
from chamberwise.exports.full.content import ON, Caution, FullPathway, Step, Way
from chamberwise.exports.full.exits import goes_next
from chamberwise.exports.full.front import HOW, KEY, SOURCES
from chamberwise.exports.full.map import BEGIN, LEGEND, TITLE
from chamberwise.exports.full.safety import SAFETY, danger_runs
from chamberwise.exports.full.words import (
    CHOICES,
    after_runs,
    before_runs,
    line_runs,
    open_choice_runs,
    source_text,
)
from chamberwise.exports.language.values import told as told_value
from chamberwise.exports.paper.sheet import Run

BETWEEN = r"\|?"
"""Two numbers that follow each other are kept apart by a bar; between texts it means nothing."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """One thing that must be there once, or may be missing; `to` is where a way leads."""

    what: str
    pattern: re.Pattern[str]
    is_optional: bool = False
    to: int = 0


@dataclass(frozen=True, slots=True)
class Stretch:
    """A part of the document: how it begins, and what it holds in any order."""

    where: str
    begins: Wanted
    holds: tuple[Wanted, ...]
    number: int = 0
    furniture: tuple[re.Pattern[str], ...] = ()
    """What may stand in it any number of times, such as "continued"."""


def squashed(text: str) -> str:
    """Return text without spaces, which writers and readers of files set as they like.

    >>> squashed("Step 1, 2 and 3 4")
    'Step1,2and3|4'
    """
    whole = text.replace("\u200b", "")
    return re.sub(r"\s+", "", re.sub(r"(?<=\d)\s+(?=\d)", "|", whole))


def expected(content: FullPathway) -> Iterator[Stretch]:
    """Yield what must be found, in the order of the pages."""
    yield _front(content)
    before = ""
    for step in content.steps:
        yield _step(content, step, is_new=step.phase != before)
        before = step.phase
    if content.open_choices:
        rows = [
            _wanted(
                _("choice {number}").format(number=each.number),
                f"{each.number} {_plain(open_choice_runs(each, at))}",
            )
            for each, at in content.open_choices
        ]
        yield Stretch(_("the choices"), _wanted(_("the heading"), _(CHOICES)), tuple(rows))
    if content.sources:
        holds = [
            _wanted(
                _("source {number}").format(number=each.number),
                f"{each.number} {source_text(each)}",
            )
            for each in content.sources
        ]
        yield Stretch(_("the sources"), _wanted(_("the heading"), _(SOURCES)), tuple(holds))


def _wanted(what: str, *texts: str, to: int = 0, is_optional: bool = False) -> Wanted:
    parts = [re.escape(squashed(text)) for text in texts if text]
    return Wanted(what, re.compile(BETWEEN + BETWEEN.join(parts)), is_optional, to)


def _front(content: FullPathway) -> Stretch:
    holds = [
        _wanted(_("the summary"), content.summary),
        _wanted(_("how to read"), _(HOW)),
        *(_wanted(_("the key"), _(words)) for _outline, words in KEY),
        _map(content),
    ]
    if content.dangers:
        holds.append(_wanted(_("the heading of the safety notes"), _(SAFETY)))
    for danger in content.dangers:
        holds.append(
            _wanted(_("the danger “{harm}”").format(harm=danger.harm), _plain(danger_runs(danger)))
        )
    signal = re.compile(re.escape(squashed(signal_word("danger"))))
    begins = _wanted(_("the title"), content.title)
    return Stretch(_("the first page"), begins, tuple(holds), furniture=(signal,))


def _map(content: FullPathway) -> Wanted:
    """The map or none. Readers put small texts of one height in an order of their own."""
    words = {word for step in content.steps for word in squashed_words(step.phase)}
    told = "|".join(re.escape(each) for each in sorted(words, key=len, reverse=True))
    span = re.escape(squashed(_("{first} to {last}").format(first="", last="")))
    drawn = (
        rf"{re.escape(squashed(_(TITLE)))}(?:{told}|{re.escape(squashed(_(BEGIN)))}|{span}|[\d,:|])+"
        rf"{re.escape(squashed(_(LEGEND)))}"
    )
    return Wanted(_("the map"), re.compile(drawn), is_optional=True)


def squashed_words(text: str) -> list[str]:
    """Return the words of a text as they are found.

    >>> squashed_words("First minute")
    ['First', 'minute']
    """
    return [squashed(each) for each in text.split()]


def _plain(runs: Iterable[Run]) -> str:
    return "".join(run.text for run in runs)


def _step(content: FullPathway, step: Step, *, is_new: bool) -> Stretch:
    phase = step.phase if is_new else ""
    start = _(BEGIN) if step.number == content.start else ""
    begins = _wanted(_("its number and words"), phase, start, str(step.number), step.heading)
    runs = (*before_runs(step), *(line_runs(each) for each in step.lines), *after_runs(step))
    texts = ["".join(run.text for run in each) for each in runs]
    holds = [
        *(_wanted(f"“{text}”", text) for text in texts),
        *(_caution(content, step, each) for each in step.cautions),
        *(_way(step, each) for each in step.ways),
    ]
    continued = re.compile(rf"{BETWEEN}{step.number}{re.escape(squashed(_('(continued)')))}")
    return Stretch(
        _("step {number}").format(number=step.number),
        begins,
        tuple(holds),
        step.number,
        (continued,),
    )


def _caution(content: FullPathway, step: Step, caution: Caution) -> Wanted:
    """In full, or what to do instead with an earlier step that tells the harm in full."""
    earlier = [
        each.number
        for each in content.steps[: step.number - 1]
        if caution.anywhere in (other.anywhere for other in each.cautions)
    ]
    forms = (squashed(_plain(caution_runs(caution, each))) for each in (0, *earlier))
    word = re.escape(squashed(signal_word(caution.signal)))
    told = "|".join(re.escape(each) for each in forms)
    return Wanted(
        _("the {signal} “{harm}”").format(signal=told_value(caution.signal), harm=caution.harm),
        re.compile(rf"{BETWEEN}{word}(?:{told})"),
    )


def _way(step: Step, way: Way) -> Wanted:
    """Label and sign, then the number in the connector, or the number the arrow comes down to."""
    label = re.escape(squashed(way.label)) + BETWEEN + re.escape(squashed(way.sign))
    before_page = re.escape(squashed(_("p.\u00a0{page}").format(page="")))
    onward = re.escape(squashed(_("to\u00a0{to}").format(to=way.to)))
    row = rf"{label}{BETWEEN}{way.to}(?!\d)(?:{before_page}(?P<page>\d+))?"
    down = rf"{label}{onward}(?!\d)" if goes_next(step, way) else ""
    pattern = f"{BETWEEN}(?:{down}|{row})" if down else BETWEEN + row
    is_silent = way.id == ON and goes_next(step, way)
    return Wanted(
        _("the way “{label}” to {to}").format(label=way.label, to=way.to),
        re.compile(pattern),
        is_silent,
        way.to,
    )


def stretches_in_order(content: FullPathway) -> tuple[tuple[Stretch, Stretch | None], ...]:
    """Return each stretch with the one that follows it."""
    every = list(expected(content))
    return (*pairwise(every), (every[-1], None))
