"""How much room text takes, told by the very program that prints it."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import Any, NamedTuple, TypeAlias

from chamberwise.engine.language.speaking import spoken
from chamberwise.exports.legibility.long_words import may_be_parted
from chamberwise.exports.paper.sheet import Run, Style, Weight
from chamberwise.exports.typesetting.compiling import compiler
from chamberwise.exports.typesetting.values import style_values, weight_of


class Setting(NamedTuple):
    """Some words in a style and a width, in millimetres."""

    runs: tuple[Run, ...]
    style: Style
    width: float


class Room(NamedTuple):
    """Height in that width, width on one line, and width of the longest word; in millimetres."""

    height: float
    width: float
    longest: float


class Word(NamedTuple):
    """A word at a size in points; with a width where it may be parted in one so narrow."""

    text: str
    size: float
    weight: Weight
    width: float | None = None


Rooms: TypeAlias = dict[Setting, Room]
Widths: TypeAlias = dict[Word, float]


@dataclass(slots=True)
class Ruler:
    """Measures many texts at once and remembers them, and the width of each word in them.

    The language, by code, tells where a long word may be parted.
    """

    known: Rooms = field(default_factory=dict)
    language: str = field(default_factory=lambda: spoken().code)
    widths: Widths = field(default_factory=dict)

    def measure(self, settings: Iterable[Setting], words: Iterable[Word] = ()) -> None:
        """Measure what is not known yet, in one go; `words` may be asked for alone."""
        new = [each for each in dict.fromkeys(settings) if each not in self.known]
        words_of = {each: _words(each) for each in new}
        asked = dict.fromkeys((*words, *(word for each in words_of.values() for word in each)))
        unmet = [each for each in asked if each not in self.widths]
        if not new and not unmet:
            return
        groups = _alike(new)
        rooms, widths = _measured(groups, unmet, self.language)
        self.widths |= widths
        for group, (free, heights) in zip(groups, rooms, strict=True):
            for each, height in zip(group, heights, strict=True):
                longest = max((self.widths[word] for word in words_of[each]), default=0.0)
                self.known[each] = Room(height, free, longest)

    def __call__(self, setting: Setting) -> Room:
        """Return the room of a text, measured now if need be."""
        if setting not in self.known:
            self.measure([setting])
        return self.known[setting]


def _words(setting: Setting) -> tuple[Word, ...]:
    """Return each word of a text once; one that may be parted is asked for in its width."""
    runs, style, width = setting
    return tuple(
        Word(text, style.size, weight_of(run, style), width if may_be_parted(text) else None)
        for run in runs
        for text in dict.fromkeys(run.text.split(" "))
        if text
    )


def _alike(settings: Iterable[Setting]) -> list[list[Setting]]:
    """Put together what differs in its width alone; where a word may be parted that matters."""
    found: dict[tuple[object, ...], list[Setting]] = {}
    for each in settings:
        is_parted = any(may_be_parted(run.text) for run in each.runs)
        found.setdefault((*each[:2], each.width if is_parted else None), []).append(each)
    return list(found.values())


def _measured(
    groups: Sequence[Sequence[Setting]], words: Iterable[Word], language: str
) -> tuple[list[tuple[float, list[float]]], Widths]:
    """Return for each group the width on one line and each height, and the width of each word."""
    texts = [
        {**style_values(each.style, each.runs), "width": each.width, "widths": widths}
        for each, widths in ((group[0], [one.width for one in group]) for group in groups)
    ]
    long, alike = [], dict[tuple[float, Weight], list[Word]]()
    for word in words:
        if word.width is None:
            alike.setdefault((word.size, word.weight), []).append(word)
        else:
            long.append(word)
    plain = [
        {"size": size, "weight": weight, "words": [word.text for word in same]}
        for (size, weight), same in alike.items()
    ]
    rooms, *widths = _asked([texts, [word._asdict() for word in long], plain], language)
    sorts = zip((long, *alike.values()), widths, strict=True)
    return rooms, {word: wide for sort in sorts for word, wide in zip(*sort, strict=True)}


def _asked(data: list[Any], language: str) -> list[Any]:
    """Return what the typesetter answers, in the order asked."""
    written = json.dumps(data, ensure_ascii=False).replace("\\", "\\\\").replace('"', '\\"')
    source = f'#import "measure.typ": told\n#told("{written}", "{language}")'
    found: list[Any] = json.loads(compiler(source.encode()).query("<found>", field="value"))
    return found
