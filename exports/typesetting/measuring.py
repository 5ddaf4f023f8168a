"""How much room text takes, told by the very program that prints it."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple, TypeAlias

import typst
from chamberwise.engine.language.speaking import spoken
from chamberwise.exports.paper.sheet import Run, Style
from chamberwise.exports.typesetting.compiling import HERE, fonts
from chamberwise.exports.typesetting.values import style_values


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


Rooms: TypeAlias = dict[Setting, Room]


@dataclass(slots=True)
class Ruler:
    """Measures many texts at once and remembers them.

    The language, by code, tells where a long word may be parted.
    """

    known: Rooms = field(default_factory=dict)
    language: str = field(default_factory=lambda: spoken().code)

    def measure(self, settings: Iterable[Setting]) -> None:
        """Measure what is not known yet, in one go."""
        new = [each for each in dict.fromkeys(settings) if each not in self.known]
        if new:
            self.known.update(zip(new, _measured(new, self.language), strict=True))

    def __call__(self, setting: Setting) -> Room:
        """Return the room of a text, measured now if need be."""
        if setting not in self.known:
            self.measure([setting])
        return self.known[setting]


def _measured(settings: Sequence[Setting], language: str) -> list[Room]:
    data = [
        {**style_values(style, runs), "width": width, "words": _words(style_values(style, runs))}
        for runs, style, width in settings
    ]
    found = json.loads(
        typst.query(
            str(HERE / "measure.typ"),
            "<found>",
            field="value",
            one=True,
            root=str(HERE),
            font_paths=fonts(),
            ignore_system_fonts=True,
            sys_inputs={"data": json.dumps(data, ensure_ascii=False), "language": language},
        )
    )
    return [Room(each["height"], each["width"], each["longest"]) for each in found]


def _words(values: dict[str, object]) -> list[dict[str, str]]:
    runs = values["runs"]
    assert isinstance(runs, list)
    return [{**run, "text": word} for run in runs for word in run["text"].split(" ") if word]
