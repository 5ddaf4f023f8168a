"""A stamp, or the register, as text."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from textwrap import fill

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import day
from chamberwise.exports.language.values import paper_told, told
from chamberwise.exports.stamp.content import CopyShown, StampShown, Worth

WIDTH = 80
NOWHERE = N_("no place told")


def stamp_text(shown: StampShown) -> str:
    """Return a stamp told to whoever stands before the sheet: the worth first."""
    return "\n".join(_lines(shown))


def _lines(shown: StampShown) -> Iterator[str]:
    yield f"{told(shown.worth).upper()}: {_subject(shown)}"
    if shown.worth is Worth.CURRENT:
        yield _wrapped(_("It says what the pathway says today: {now}.").format(now=shown.now))
    elif shown.worth is Worth.SUPERSEDED and shown.now:
        yield _wrapped(_("Superseded by {now}.").format(now=shown.now))
    yield from (_wrapped(each) for each in shown.said)
    if shown.changed:
        yield _("Changed since:")
        yield from (_wrapped(each, "  - ", "    ") for each in shown.changed)
    yield from (_("Copy: {copy}").format(copy=_copy(each)) for each in shown.copies)


def _subject(shown: StampShown) -> str:
    if shown.worth is Worth.UNKNOWN:
        return shown.code
    return _("{title}, {sheet}, edition {edition} ({code})").format(
        title=shown.title, sheet=shown.sheet, edition=shown.edition, code=shown.code
    )


def _copy(copy: CopyShown) -> str:
    paper = f"{paper_told(copy.paper)}, " if copy.paper else ""
    return paper + _("printed {day}, {place}").format(day=day(copy.printed), place=_place(copy))


def _place(copy: CopyShown) -> str:
    return _("hangs: {hangs}").format(hangs=copy.hangs) if copy.hangs else _(NOWHERE)


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
            told(copy.worth).upper() if copy.worth is not Worth.CURRENT else told(copy.worth),
            copy.code,
            copy.sheet,
            paper_told(copy.paper),
            copy.edition,
            day(copy.printed),
            copy.hangs or _(NOWHERE),
            copy.title,
        )
        for copy in ordered
    ]


HEADS = (
    N_("worth"),
    N_("stamp"),
    N_("sheet"),
    N_("paper"),
    N_("edition"),
    N_("printed"),
    N_("hangs"),
    N_("pathway"),
)
