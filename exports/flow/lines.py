"""Lines of plain text in which no quantity is parted from its unit."""

from __future__ import annotations

from textwrap import wrap

from chamberwise.exports.flow.holding import HOLD, held


def in_lines(said: str, width: int, first: str = "", rest: str = "") -> list[str]:
    """Return a text as lines, the first behind `first`, the others behind `rest`.

    >>> in_lines("Inject 10 mg now", 9)
    ['Inject', '10 mg now']
    """
    lines = wrap(
        held(said),
        width,
        initial_indent=first,
        subsequent_indent=rest,
        break_long_words=False,
        break_on_hyphens=False,
    )
    return [line.replace(HOLD, " ") for line in lines]
