"""Which cautions a step shows: its own, and those of steps passed silently on the way to it."""

from __future__ import annotations

from chamberwise.engine.meaning.advance import Decided, Passage, PassedOver
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Caution, SignalWord

_SEVERITY = tuple(SignalWord)


def cautions_shown(library: Library, passage: Passage) -> tuple[tuple[Place, Caution], ...]:
    """Return the cautions to be shown at the end of a passage, the most severe first.

    A question passed over or a branch gone through shows nothing itself, so its cautions are
    carried to the next step that does.
    """
    passed = [silent.place for silent in passage.silent if isinstance(silent, PassedOver | Decided)]
    found = {
        caution: (place, caution)
        for place in (*passed, passage.state.place)
        for caution in library.step(place).cautions
    }
    return tuple(sorted(found.values(), key=lambda each: _SEVERITY.index(each[1].signal)))
