"""A walk: a journal, and what it folds to. Every change returns a new walk; nothing is lost.

The state is never set here: it is what `advance` makes of the moves in the journal.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.advance import (
    IllegalMoveError,
    Passage,
    begin,
    moves,
    passage,
)
from chamberwise.engine.meaning.effects import after_action
from chamberwise.engine.meaning.layout import Field, layout_of
from chamberwise.engine.meaning.state import Freshness, Move, State
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Action, Outcome, PathwayId, Step
from chamberwise.engine.walk.entries import Began, Entry, Moved, Noted, Redone, Resumed, Undone


@dataclass(frozen=True, slots=True)
class Leg:
    """One move that stands: the state it was made in, and what it led to."""

    before: State
    move: Move
    made: Passage
    at: datetime


@dataclass(frozen=True, slots=True)
class Walk:
    """A walk over one pathway. `legs` stand, oldest first; `taken_back` can be made again."""

    library: Library
    journal: tuple[Entry, ...]
    first: Passage
    legs: tuple[Leg, ...] = ()
    taken_back: tuple[Leg, ...] = ()
    replay: tuple[Move, ...] = ()
    """The moves of a walk to be gone through again, from the first on; never journalled."""

    @property
    def began(self) -> Began:
        """The journal's first entry."""
        entry = self.journal[0]
        assert isinstance(entry, Began)
        return entry

    @property
    def last(self) -> Passage:
        """The passage that led to where the walk stands."""
        return self.legs[-1].made if self.legs else self.first

    @property
    def state(self) -> State:
        """Where the walk stands."""
        return self.last.state

    @property
    def step(self) -> Step:
        """The step the walk stands on."""
        return self.library.step(self.state.place)

    @property
    def is_over(self) -> bool:
        """Whether the walk stands on an outcome with nothing left to go back to."""
        return isinstance(self.step, Outcome)

    @property
    def is_off_replay(self) -> bool:
        """Whether another move was made than the one to be replayed."""
        made = tuple(leg.move for leg in self.legs)
        return bool(self.replay) and made[: len(self.replay)] != self.replay[: len(made)]

    @property
    def ahead(self) -> tuple[Move, ...]:
        """The moves of a replay still to be made, the next one first."""
        return () if self.is_off_replay else self.replay[len(self.legs) :]

    @property
    def can_redo(self) -> bool:
        """Whether a move was taken back, or a replay has one ahead."""
        return bool(self.taken_back or self.ahead)

    @property
    def is_stuck(self) -> bool:
        """Whether no move is left and yet no outcome is reached; a checked pathway never is."""
        return not self.is_over and not moves(self.library, self.state)

    @property
    def since(self) -> datetime:
        """When the walk came to the step it stands on."""
        return self.legs[-1].at if self.legs else self.began.at


class JournalError(ValueError):
    """The journal does not fold over this library; `args[0]` says what does not fit."""


def set_out(
    library: Library, pathway: str, digest: str, now: datetime, replay: tuple[Move, ...] = ()
) -> Walk:
    """Return a new walk at the entry of a pathway, with the moves of a replay ahead of it."""
    began = Began(now, pathway, library.pathways[pathway].edition, digest)
    return Walk(library, (began,), begin(library, pathway), replay=replay)


def make(walk: Walk, move: Move, now: datetime) -> Walk:
    """Return the walk after a move. Raises `IllegalMoveError`; moves taken back are dropped."""
    leg = Leg(walk.state, move, passage(walk.library, walk.state, move), now)
    entry = Moved(now, move)
    return replace(walk, journal=(*walk.journal, entry), legs=(*walk.legs, leg), taken_back=())


def undo(walk: Walk, now: datetime) -> Walk:
    """Return the walk with its last move taken back; unchanged where there is none."""
    if not walk.legs:
        return walk
    return replace(
        walk,
        journal=(*walk.journal, Undone(now)),
        legs=walk.legs[:-1],
        taken_back=(*walk.taken_back, walk.legs[-1]),
    )


def redo(walk: Walk, now: datetime) -> Walk:
    """Return the walk with the move last taken back made again; unchanged where there is none.

    A replay goes on by its next move, whatever was taken back.
    """
    if walk.ahead and not (walk.taken_back and walk.taken_back[-1].move == walk.ahead[0]):
        return make(walk, walk.ahead[0], now)
    if not walk.taken_back:
        return walk
    return replace(
        walk,
        journal=(*walk.journal, Redone(now)),
        legs=(*walk.legs, walk.taken_back[-1]),
        taken_back=walk.taken_back[:-1],
    )


def note(walk: Walk, text: str, now: datetime) -> Walk:
    """Return the walk with something written down."""
    return replace(walk, journal=(*walk.journal, Noted(now, text)))


def resumed(walk: Walk, now: datetime) -> Walk:
    """Return the walk with an interruption marked."""
    return replace(walk, journal=(*walk.journal, Resumed(now)))


def fold(library: Library, journal: Iterable[Entry]) -> Walk:
    """Return the walk a journal describes. Raises `JournalError` where it does not fit."""
    entries = iter(journal)
    first = next(entries, None)
    if not isinstance(first, Began):
        raise JournalError(_("the journal does not say which pathway was walked"))
    if first.pathway not in library.pathways:
        raise JournalError(_("there is no pathway `{pathway}`").format(pathway=first.pathway))
    walk = Walk(library, (first,), begin(library, first.pathway))
    for entry in entries:
        walk = _after(walk, entry)
    return walk


def _after(walk: Walk, entry: Entry) -> Walk:
    match entry:
        case Moved(at, move):
            try:
                return make(walk, move, at)
            except IllegalMoveError as error:
                raise JournalError(
                    _("a move no longer fits: {move} at {place}").format(
                        move=error.move, place=error.place
                    )
                ) from error
        case Undone(at):
            return undo(walk, at)
        case Redone(at):
            return redo(walk, at)
        case Noted(at, text):
            return note(walk, text, at)
        case Resumed(at):
            return resumed(walk, at)
        case Began():
            raise JournalError(_("the journal begins twice"))


def made_stale_by(walk: Walk, field: Field) -> tuple[Action, Place] | None:
    """Return the last action done that makes a finding stale, if it is stale now."""
    if walk.state.freshness(field) is not Freshness.STALE:
        return None
    for leg in reversed(walk.legs):
        place = leg.before.place
        step = walk.library.step(place)
        if isinstance(step, Action) and _makes_stale(walk.library, step, place.pathway, field):
            return step, place
    return None


def _makes_stale(library: Library, action: Action, pathway: PathwayId, field: Field) -> bool:
    known = field.every & -field.every
    _known, last_seen = after_action(
        action, (known, 0), library.words(pathway), layout_of(library), pathway
    )
    return bool(last_seen & field.every)


def fields_in_play(walk: Walk) -> tuple[Field, ...]:
    """Return every finding the pathway stood on can speak of that is not wholly unknown."""
    layout = layout_of(walk.library)
    return tuple(
        field
        for field in layout.fields(walk.state.place.pathway)
        if walk.state.freshness(field) is not Freshness.UNKNOWN
    )
