"""What a stamp is worth today: current, superseded or unknown."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from typing import NamedTuple, TypeAlias

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.stamp.code import MistypedError, read_stamp, stamp_of
from chamberwise.engine.stamp.content import content_digest
from chamberwise.engine.stamp.copies import Copy, Register
from chamberwise.engine.stamp.sheet import language_of


class Printable(NamedTuple):
    """A sheet that could be printed now."""

    pathway: PathwayId
    sheet: str
    content: str

    @property
    def language(self) -> str:
        """The language it is in, by code."""
        return language_of(self.sheet)


@dataclass(frozen=True, slots=True)
class Current:
    """It says what its pathway says."""

    code: str
    printable: Printable
    copies: tuple[Copy, ...]


@dataclass(frozen=True, slots=True)
class Superseded:
    """Its pathway says something else now, or has gone: then there is nothing to print anew."""

    code: str
    copies: tuple[Copy, ...]
    now: str | None
    """The digest of what the pathway says now."""


@dataclass(frozen=True, slots=True)
class Unknown:
    """Nothing here has this stamp; why, and the known stamp most like it."""

    typed: str
    why: str
    nearest: str | None


Verdict: TypeAlias = Current | Superseded | Unknown

NEVER_SEEN = N_(
    "It is well formed, but no sheet of this library has it and none was "
    "registered here. It may have been printed elsewhere, or from an older edition "
    "without being registered."
)


def stamps(library: Library, sheets: Iterable[str]) -> dict[str, Printable]:
    """Return the stamp of every sheet that could be printed of a library now."""
    kinds = tuple(sheets)
    contents = {name: content_digest(library, name) for name in library.pathways}
    return {
        stamp_of(content, sheet): Printable(name, sheet, content)
        for name, content in contents.items()
        for sheet in kinds
    }


def verdict(typed: str, now: Mapping[str, Printable], register: Register) -> Verdict:
    """Return what a stamp is worth, `now` being every stamp that could be printed now."""
    known = [*now, *(copy.code for copy in register.copies)]
    try:
        code = read_stamp(typed)
    except MistypedError as error:
        return Unknown(typed, str(error), _nearest(typed, known))
    copies = register.of(code)
    if code in now:
        return Current(code, now[code], copies)
    if not copies:
        return Unknown(code, _(NEVER_SEEN), _nearest(code, known))
    contents = {(each.pathway, each.language): each.content for each in now.values()}
    last = copies[-1]
    return Superseded(code, copies, contents.get((last.pathway, last.language)))


def _nearest(typed: str, known: Sequence[str]) -> str | None:
    """Return the stamp that differs in a sign or two."""
    found = get_close_matches(typed.upper(), dict.fromkeys(known), n=1, cutoff=0.8)
    return found[0] if found else None
