"""What is owed at the end of a walk, outcomes passed on returning handovers among them."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.meaning.advance import CameBack
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.step import Outcome
from chamberwise.engine.walk.walk import Walk
from chamberwise.exports.record.content import Owed
from chamberwise.exports.record.naming import duty_title


def outcomes_reached(walk: Walk) -> tuple[Place, ...]:
    """Return every outcome reached, in the order reached: those passed, then the one stood on."""
    passages = (walk.first, *(leg.made for leg in walk.legs))
    passed = (silent for passage in passages for silent in passage.silent)
    places = [silent.outcome for silent in passed if isinstance(silent, CameBack)]
    if walk.is_over:
        places.append(walk.state.place)
    return tuple(dict.fromkeys(places))


def owed(walk: Walk) -> tuple[Owed, ...]:
    """Return what is owed, each line once."""
    return tuple(dict.fromkeys(_owed(walk)))


def _owed(walk: Walk) -> Iterator[Owed]:
    for place in outcomes_reached(walk):
        step = walk.library.step(place)
        assert isinstance(step, Outcome)
        words = walk.library.words(place.pathway)
        for line in step.owed:
            yield Owed(duty_title(words, line.who), line.text, line.when, step.title)
