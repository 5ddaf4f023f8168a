"""Which words of two texts differ, marked so that a photocopy still shows it."""

from __future__ import annotations

from collections.abc import Iterator
from difflib import SequenceMatcher

from chamberwise.exports.paper.sheet import Run, Weight

OPENS, CLOSES = "[", "]"


def marked(was: str, now: str) -> tuple[tuple[Run, ...], tuple[Run, ...]]:
    """Return both texts as runs; what only one of them has is bold and in square brackets.

    >>> [run.text for run in marked("Fill it now.", "Fill all now.")[1]]
    ['Fill', ' [all]', ' now.']
    """
    before, after = was.split(), now.split()
    codes = SequenceMatcher(None, before, after, autojunk=False).get_opcodes()
    old = ((before[a:b], tag != "equal") for tag, a, b, _, _ in codes)
    new = ((after[c:d], tag != "equal") for tag, _, _, c, d in codes)
    return tuple(_runs(old)), tuple(_runs(new))


def _runs(pieces: Iterator[tuple[list[str], bool]]) -> Iterator[Run]:
    told = [(" ".join(words), differs) for words, differs in pieces if words]
    for place, (text, differs) in enumerate(told):
        space = " " if place else ""
        if differs:
            yield Run(f"{space}{OPENS}{text}{CLOSES}", Weight.BOLD)
        else:
            yield Run(f"{space}{text}")
