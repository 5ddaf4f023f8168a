"""Which letters cannot be printed: those our font lacks, and scripts that run right to left."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from struct import unpack_from
from typing import NamedTuple
from unicodedata import bidirectional, name

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.paper.sheet import Sheet
from chamberwise.exports.typesetting.compiling import UnprintableError
from chamberwise.exports.typesetting.fonts import FAMILY, upright

RIGHT_TO_LEFT = ("R", "AL")
SEGMENTED = 12
"""The format of the character map that lists every letter in groups."""
LONGEST = 40


class Fault(NamedTuple):
    """A letter that cannot be printed, the text it stands in, and the page."""

    letter: str
    text: str
    page: int

    @property
    def is_right_to_left(self) -> bool:
        """Whether it belongs to a script that runs from right to left."""
        return bidirectional(self.letter) in RIGHT_TO_LEFT

    def __str__(self) -> str:
        short = self.text if len(self.text) <= LONGEST else self.text[:LONGEST] + " …"
        where = _("“{letter}” ({name}) on page {page}, in “{text}”").format(
            letter=self.letter, name=name(self.letter, _("no name")), page=self.page, text=short
        )
        if self.is_right_to_left:
            why = _("{where}: scripts that run from right to left are not printed yet.")
        else:
            why = _("{where}: the font {font} has no such letter.")
        return why.format(where=where, font=FAMILY)


def faults(sheet: Sheet) -> tuple[Fault, ...]:
    """Return each letter that cannot be printed where it is met first; of right to left, one."""
    found: dict[str, Fault] = {}
    for fault in _faults(sheet):
        found.setdefault("right to left" if fault.is_right_to_left else fault.letter, fault)
    return tuple(found.values())


def refuse_letters(sheet: Sheet) -> None:
    """Raise `UnprintableError` where there are letters that cannot be printed."""
    found = faults(sheet)
    if found:
        told = [_("This cannot be printed:"), *map(str, found), _("Ways out:")]
        raise UnprintableError("\n".join([*told, *dict.fromkeys(map(_way_out, found))]))


def _way_out(fault: Fault) -> str:
    if fault.is_right_to_left:
        way = _("Write the pathway in a script that runs from left to right.")
    else:
        way = _("Write those words without that letter.")
    return f"  - {way}"


def _faults(sheet: Sheet) -> Iterator[Fault]:
    everything = {letter for page in sheet.pages for text in page.texts for letter in text.text}
    lacking = {letter for letter in everything - {"\n"} if not _is_printed(letter)}
    for number, page in enumerate(sheet.pages, start=1):
        for text in page.texts if lacking else ():
            words = text.text
            for letter in dict.fromkeys(words):
                if letter in lacking:
                    yield Fault(letter, words, number)


def _is_printed(letter: str) -> bool:
    is_there = any(ord(letter) in group for group in covered())
    return is_there and bidirectional(letter) not in RIGHT_TO_LEFT


@cache
def covered() -> tuple[range, ...]:
    """Return the letters of our font, by number, from its character map (OpenType, `cmap`)."""
    font = upright().read_bytes()
    (count,) = unpack_from(">H", font, 4)
    tables = {
        font[at : at + 4]: unpack_from(">L", font, at + 8)[0]
        for at in range(12, 12 + 16 * count, 16)
    }
    start = tables[b"cmap"]
    (maps,) = unpack_from(">H", font, start + 2)
    places = (start + unpack_from(">L", font, start + 8 + 8 * each)[0] for each in range(maps))
    place = next(each for each in places if unpack_from(">H", font, each)[0] == SEGMENTED)
    (groups,) = unpack_from(">L", font, place + 12)
    bounds = (unpack_from(">LL", font, place + 16 + 12 * each) for each in range(groups))
    return tuple(range(first, last + 1) for first, last in bounds)
