"""A stamp, or the register, as text."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from textwrap import fill

from chamberwise.exports.control.content import day
from chamberwise.exports.stamp.content import CopyShown, StampShown, Worth

WIDTH = 80
NOWHERE = "no place told"


def stamp_text(shown: StampShown) -> str:
    """Return a stamp told to whoever stands before the sheet: the worth first."""
    return "\n".join(_lines(shown))


def _lines(shown: StampShown) -> Iterator[str]:
    yield f"{shown.worth.upper()}: {_subject(shown)}"
    if shown.worth is Worth.CURRENT:
        yield _wrapped(f"It says what the pathway says today: {shown.now}.")
    elif shown.worth is Worth.SUPERSEDED and shown.now:
        yield _wrapped(f"Superseded by {shown.now}.")
    yield from (_wrapped(each) for each in shown.said)
    if shown.changed:
        yield "Changed since:"
        yield from (_wrapped(each, "  - ", "    ") for each in shown.changed)
    yield from (f"Copy: {_copy(each)}" for each in shown.copies)


def _subject(shown: StampShown) -> str:
    if shown.worth is Worth.UNKNOWN:
        return shown.code
    return f"{shown.title}, {shown.sheet}, edition {shown.edition} ({shown.code})"


def _copy(copy: CopyShown) -> str:
    paper = f"{copy.paper}, " if copy.paper else ""
    return f"{paper}printed {day(copy.printed)}, {_place(copy)}"


def _place(copy: CopyShown) -> str:
    return f"hangs: {copy.hangs}" if copy.hangs else NOWHERE


def _wrapped(text: str, first: str = "", then: str = "") -> str:
    return fill(
        text,
        WIDTH,
        initial_indent=first,
        subsequent_indent=then,
        break_on_hyphens=False,
        break_long_words=False,
    )


def register_rows(copies: Sequence[CopyShown]) -> list[tuple[str, ...]]:
    """Return a row for each copy, those to be taken down first."""
    ordered = sorted(copies, key=lambda copy: copy.worth is Worth.CURRENT)
    return [
        (
            copy.worth.upper() if copy.worth is not Worth.CURRENT else str(copy.worth),
            copy.code,
            copy.sheet,
            copy.paper,
            copy.edition,
            day(copy.printed),
            copy.hangs or NOWHERE,
            copy.title,
        )
        for copy in ordered
    ]


HEADS = ("worth", "stamp", "sheet", "paper", "edition", "printed", "hangs", "pathway")
