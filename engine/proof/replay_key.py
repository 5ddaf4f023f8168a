"""A short key of a walk, to be typed: which pathway, of which content, and the choices made.

Only choices are stored: where one move alone is legal it is made without being told. Behind two
signs for the pathway and three for the content stand the number of moves and then, as a number in
mixed radix, which of the legal moves was made at each state.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from hashlib import sha256

from chamberwise.engine.keys.base32 import number_of, written
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.advance import advance, begin, moves
from chamberwise.engine.meaning.state import Move
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.reading.digest import digest
from chamberwise.engine.reading.library import Loaded

NAME = 1 << 10
CONTENT = 1 << 15
COUNTED_BY = 64
MOST_MOVES = COUNTED_BY**2


class ReplayKeyError(ValueError):
    """The key cannot be replayed; `args[0]` says why, as sentences."""


class MistypedError(ReplayKeyError):
    """The check signs do not fit."""


class NoSuchPathwayError(ReplayKeyError):
    """No pathway at hand is the one of the key."""


class ChangedSinceError(ReplayKeyError):
    """The pathway, or a word it uses, is no longer what it was."""


class NoLongerLegalError(ReplayKeyError):
    """The moves do not fit the pathway."""


def key_of(loaded: Loaded, pathway: PathwayId, made: Sequence[Move]) -> str:
    """Return the key of a walk from the entry of a pathway. Raises `ValueError` for no walk."""
    number = 0
    for radix, chosen in reversed([*_count(len(made)), *_choices(loaded.library, pathway, made)]):
        number = number * radix + chosen
    number = number * CONTENT + _content(loaded, pathway)
    return written(number * NAME + _name(pathway), least=6)


def moves_of(
    loaded: Loaded, key: str, pathways: Iterable[PathwayId]
) -> tuple[PathwayId, tuple[Move, ...]]:
    """Return the walk of a key, its pathway being one of some. Raises `ReplayKeyError`."""
    number = number_of(key)
    if number is None:
        raise MistypedError(_("This key is mistyped: its check signs do not fit. Type it anew."))
    number, name = divmod(number, NAME)
    number, content = divmod(number, CONTENT)
    named = [each for each in pathways if _name(each) == name]
    if not named:
        raise NoSuchPathwayError(
            _(
                "This key is of a pathway that is not here. Name its file, or the folder after "
                "--library."
            )
        )
    for pathway in named:
        if _content(loaded, pathway) == content:
            return pathway, tuple(_replayed(loaded.library, pathway, number))
    raise ChangedSinceError(
        _(
            "`{named}`, or a word it uses, has changed since this key was made. "
            "`chamberwise prove {named}` makes a new one where a rule is still broken."
        ).format(named=named[0])
    )


def _name(pathway: PathwayId) -> int:
    return int.from_bytes(sha256(pathway.encode()).digest()[:4]) % NAME


def _content(loaded: Loaded, pathway: PathwayId) -> int:
    return int(digest(loaded, pathway)[:8], 16) % CONTENT


def _count(made: int) -> Iterator[tuple[int, int]]:
    """Yield a number of moves as digits: each with whether another follows."""
    more, rest = divmod(made, COUNTED_BY)
    yield 2 * COUNTED_BY, 2 * rest + bool(more)
    if more:
        yield from _count(more)


def _choices(
    library: Library, pathway: PathwayId, made: Iterable[Move]
) -> Iterator[tuple[int, int]]:
    """Yield, at each state, how many moves are legal and which of them was made."""
    state = begin(library, pathway).state
    for move in made:
        legal = moves(library, state)
        yield len(legal), legal.index(move)
        state = advance(library, state, move)


def _replayed(library: Library, pathway: PathwayId, number: int) -> Iterator[Move]:
    count, number = _counted(number)
    state = begin(library, pathway).state
    for made in range(count):
        legal = moves(library, state)
        if not legal or made == MOST_MOVES:
            break
        number, chosen = divmod(number, len(legal))
        yield legal[chosen]
        state = advance(library, state, legal[chosen])
    else:
        if not number:
            return
    raise NoLongerLegalError(
        _(
            "The moves of this key do not fit `{pathway}` as it stands. `chamberwise prove "
            "{pathway}` makes a new one where a rule is still broken."
        ).format(pathway=pathway)
    )


def _counted(number: int) -> tuple[int, int]:
    count, worth, more = 0, 1, 1
    while more:
        number, digit = divmod(number, 2 * COUNTED_BY)
        rest, more = divmod(digit, 2)
        count += rest * worth
        worth *= COUNTED_BY
    return count, number
