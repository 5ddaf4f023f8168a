"""Which machines a moment may concern, found by what happens instead of by asking each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

from chamberwise.engine.meaning.happens import shows_event
from chamberwise.engine.meaning.moments import Moment
from chamberwise.engine.model.rule import Happening
from chamberwise.engine.proof.monitors import Monitor
from chamberwise.engine.proof.showing import ALWAYS, Label, labels_of

Concern: TypeAlias = tuple[int, int, Happening, bool]
"""A machine, the bit of one of its letters, what makes it true, and whether it does whatever is

known.
"""


@dataclass(slots=True)
class Index:
    """The happenings of all machines by the one label that each must show."""

    by_label: dict[Label, list[Concern]] = field(default_factory=dict)
    restless: list[int] = field(default_factory=list)
    """Machines that a moment may change though it shows nothing they speak of."""

    def concerns(self, moment: Moment) -> Iterator[Concern]:
        """Yield every letter that a moment may make true, what is known left aside."""
        for label in labels_of(moment):
            for concern in self.by_label.get(label, ()):
                if shows_event(concern[2], moment):
                    yield concern


def index_of(monitors: Sequence[Monitor]) -> Index:
    """Return the index of some machines."""
    index = Index()
    for number, monitor in enumerate(monitors):
        if any(row[0] != state for state, row in enumerate(monitor.machine.after)):
            index.restless.append(number)
        for place, any_of in enumerate(monitor.roles):
            for happening in any_of:
                concern = number, 1 << place, happening, happening == happening.event
                for label in _telling(happening):
                    index.by_label.setdefault(label, []).append(concern)
    return index


def _telling(happening: Happening) -> list[Label]:
    """Return labels of which a moment shows at least one, by the part that tells most."""
    for kind, names in (
        ("act", happening.acts),
        ("asks", happening.asks),
        ("outcome", happening.outcomes),
        ("hands over to", happening.hands_over_to),
        ("warns of", happening.warns_of),
        ("by", happening.by),
    ):
        if names:
            return [(kind, name) for name in dict.fromkeys(names)]
    return [ALWAYS]
