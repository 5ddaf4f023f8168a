"""What must be found again in the finished file, stretch by stretch, as patterns without spaces."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from chamberwise.exports.full.cautions import ALERT
from chamberwise.exports.full.content import ON, Caution, FullPathway, Step, Way
from chamberwise.exports.full.exits import goes_next
from chamberwise.exports.full.front import HOW, KEY, SAFETY, SOURCES
from chamberwise.exports.full.map import BEGIN, TITLE, numbers
from chamberwise.exports.full.words import (
    after_runs,
    before_runs,
    line_runs,
    marks,
    source_text,
)

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
    if content.sources:
        holds = [
            _wanted(f"source {each.number}", f"{each.number} {source_text(each)}")
            for each in content.sources
        ]
        yield Stretch("the sources", _wanted("the heading", SOURCES), tuple(holds))


def _wanted(what: str, *texts: str, to: int = 0, is_optional: bool = False) -> Wanted:
    parts = [re.escape(squashed(text)) for text in texts if text]
    return Wanted(what, re.compile(BETWEEN + BETWEEN.join(parts)), is_optional, to)


def _front(content: FullPathway) -> Stretch:
    holds = [
        _wanted("the summary", content.summary),
        _wanted("how to read", HOW),
        *(_wanted("the key", words) for _, words in KEY),
        _map(content),
    ]
    if content.dangers:
        holds.append(_wanted("the heading of the safety notes", SAFETY))
    for danger in content.dangers:
        word = "Step" if len(danger.steps) == 1 else "Steps"
        told = f"{word} {', '.join(str(each) for each in danger.steps)}."
        words = f"{ALERT}DANGER{danger.harm}Instead: {danger.instead} {told}"
        holds.append(_wanted(f"the danger “{danger.harm}”", words))
    return Stretch("the first page", _wanted("the title", content.title), tuple(holds))


def _map(content: FullPathway) -> Wanted:
    """Either map, or none. Readers put small texts of one height in an order of their own."""
    figures = sum(len(str(step.number)) for step in content.steps)
    steps = rf"{TITLE}{BETWEEN}{BEGIN}(?:{BETWEEN}\d){{{figures}}}"
    phases = dict.fromkeys(step.phase for step in content.steps)
    boxes = [re.escape(squashed(f"{each} {numbers(content.steps, each)}")) for each in phases]
    drawn = rf"{TITLE}(?:{BETWEEN}(?:{'|'.join(boxes)})){{{len(boxes)}}}"
    return Wanted("the map", re.compile(f"(?:{steps}|{drawn})"), is_optional=True)


def _step(content: FullPathway, step: Step, *, is_new: bool) -> Stretch:
    phase = step.phase if is_new else ""
    start = BEGIN if step.number == content.start else ""
    begins = _wanted("its number and words", phase, start, str(step.number), step.heading)
    runs = (*before_runs(step), *(line_runs(each) for each in step.lines), *after_runs(step))
    texts = ["".join(run.text for run in each) for each in runs]
    holds = [
        *(_wanted(f"“{text}”", text) for text in texts),
        *(_wanted(f"the {each.signal} “{each.harm}”", _caution(each)) for each in step.cautions),
        *(_way(step, each) for each in step.ways),
    ]
    continued = re.compile(rf"{BETWEEN}{step.number}\(continued\)")
    return Stretch(f"step {step.number}", begins, tuple(holds), step.number, (continued,))


def _caution(caution: Caution) -> str:
    word = ("" if caution.signal == "notice" else ALERT) + caution.signal.upper()
    return f"{word}{caution.harm}Instead: {caution.instead}{marks(caution.sources)}"


def _way(step: Step, way: Way) -> Wanted:
    """Label and sign, then the number in the connector, or the number the arrow comes down to."""
    label = re.escape(squashed(way.label)) + BETWEEN + re.escape(squashed(way.sign))
    row = rf"{label}{BETWEEN}{way.to}(?!\d)(?:page(?P<page>\d+))?"
    down = rf"{label}to{way.to}(?!\d)" if goes_next(step, way) else ""
    pattern = f"{BETWEEN}(?:{down}|{row})" if down else BETWEEN + row
    is_silent = way.id == ON and goes_next(step, way)
    return Wanted(f"the way “{way.label}” to {way.to}", re.compile(pattern), is_silent, way.to)


def stretches_in_order(content: FullPathway) -> tuple[tuple[Stretch, Stretch | None], ...]:
    """Return each stretch with the one that follows it."""
    every = list(expected(content))
    return (*pairwise(every), (every[-1], None))
