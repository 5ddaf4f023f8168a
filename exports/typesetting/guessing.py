"""How much room text takes, guessed from the widths of its words, for searching a size.

What a search settles on is measured afterwards by what prints it; a guess is never printed.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from chamberwise.exports.legibility.angle import MM_PER_POINT
from chamberwise.exports.legibility.long_words import may_be_parted
from chamberwise.exports.paper.sheet import Style, Weight
from chamberwise.exports.typesetting.measuring import Room, Ruler, Setting, Word

REFERENCE = 12.0
PART = 10
"""Letters of a part of a word that is parted."""
FILLED = 0.85
"""Of its width: what a line of parted words fills."""
LINE = 1.02
"""Of the size: from the highest to the lowest letter of a line."""


@dataclass(slots=True)
class Guess:
    """Guesses like a ruler measures; words it has not met are measured once, at one size."""

    ruler: Ruler
    widths: dict[tuple[str, Weight], float] = field(default_factory=dict)
    spaces: dict[Weight, float] = field(default_factory=dict)

    def meet(self, lay: Callable[[Meeting], object]) -> None:
        """Measure, in one go, the words that laying out asks for, each in its weight."""
        meeting = Meeting()
        lay(meeting)
        spaces = ((text, weight) for text in ("n n", "nn") for weight in Weight)
        asked = {each: _free(*each) for each in (*meeting.words, *spaces)}
        self.ruler.measure((), asked.values())
        self.widths |= {key: self.ruler.widths[each] for key, each in asked.items()}

    def __call__(self, setting: Setting) -> Room:
        """Return the room of a text as guessed."""
        style = setting.style
        em = style.size * MM_PER_POINT
        lines, widest, longest = 0, 0.0, 0.0
        for paragraph in _words(setting):
            more, wide, long = self._set(paragraph, style, setting.width)
            lines, widest, longest = lines + more, max(widest, wide), max(longest, long)
        return Room(em * (LINE + (max(lines, 1) - 1) * style.pitch), widest, longest)

    def _set(
        self, words: list[tuple[str, Weight]], style: Style, width: float
    ) -> tuple[int, float, float]:
        scale = style.size / REFERENCE
        lines, here, whole, longest = 1, 0.0, 0.0, 0.0
        for word, weight in words:
            gap = self._space(weight) * scale
            space = gap if here else 0.0
            wide = self._width(word, weight) * scale
            whole += wide + (gap if whole else 0.0)
            if wide > width and may_be_parted(word):
                longest = max(longest, wide * PART / max(PART, len(word)))
                more, here = divmod(here + space + wide, width * FILLED)
                lines += int(more)
                continue
            longest = max(longest, wide)
            if here and here + space + wide > width:
                lines, here = lines + 1, wide
            else:
                here += space + wide
        return lines, whole, longest

    def _space(self, weight: Weight) -> float:
        if weight not in self.spaces:
            self.spaces[weight] = self._width("n n", weight) - self._width("nn", weight)
        return self.spaces[weight]

    def _width(self, word: str, weight: Weight) -> float:
        found = self.widths.get((word, weight))
        if found is None:
            asked = _free(word, weight)
            self.ruler.measure((), [asked])
            found = self.widths[word, weight] = self.ruler.widths[asked]
        return found


@dataclass(slots=True)
class Meeting:
    """Notes the words of what it is asked; finds room for everything."""

    words: dict[tuple[str, Weight], None] = field(default_factory=dict)

    def __call__(self, setting: Setting) -> Room:
        """Note a text; tell something harmless."""
        for paragraph in _words(setting):
            self.words.update(dict.fromkeys(paragraph))
        return Room(0.0, 0.0, 0.0)


@dataclass(slots=True)
class Asked:
    """Guesses, and remembers what was asked."""

    guess: Guess
    settings: list[Setting] = field(default_factory=list)

    def __call__(self, setting: Setting) -> Room:
        """Return the room of a text as guessed."""
        self.settings.append(setting)
        return self.guess(setting)


def measured(guess: Guess, lay: Callable[[Asked], object]) -> Ruler:
    """Return the ruler of a guess once it has measured, in one go, what laying out asks for."""
    asked = Asked(guess)
    lay(asked)
    guess.ruler.measure(asked.settings)
    return guess.ruler


def _free(word: str, weight: Weight) -> Word:
    return Word(word, REFERENCE, weight)


def _words(setting: Setting) -> list[list[tuple[str, Weight]]]:
    """Return the words of each paragraph with their weights."""
    paragraphs: list[list[tuple[str, Weight]]] = [[]]
    for run in setting.runs:
        weight = run.weight if run.weight is not Weight.REGULAR else setting.style.weight
        first, *rest = run.text.split("\n")
        paragraphs[-1] += [(word, weight) for word in first.split(" ") if word]
        paragraphs += [[(word, weight) for word in each.split(" ") if word] for each in rest]
    return paragraphs
