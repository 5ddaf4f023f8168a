"""What moments show and what rules ask, read from the model and nothing else."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from chamberwise.engine.model.rule import ANY, AnyOf, Happening, Rule
from chamberwise.engine.model.step import Action, Line, SignalWord, Step


@dataclass(frozen=True)
class Event:
    """What one moment shows, whatever is known."""

    act: str | None = None
    by: str | None = None
    warns_of: frozenset[str] = frozenset()
    asks: str | None = None
    outcome: str | None = None
    hands_over_to: str | None = None

    def shows(self, wanted: Happening) -> bool:
        return all(
            not names or not names_shown.isdisjoint(names)
            for names, names_shown in (
                (wanted.acts, {self.act}),
                (wanted.by, {self.by}),
                (wanted.warns_of, self.warns_of),
                (wanted.asks, {self.asks}),
                (wanted.outcomes, {self.outcome, ANY} if self.outcome else set()),
                (wanted.hands_over_to, {self.hands_over_to}),
            )
        )


def happenings(rule: Rule) -> Iterator[Happening]:
    several: tuple[AnyOf, ...] = (rule.of, rule.by, rule.scope.opens, rule.scope.closes)
    for any_of in several:
        yield from any_of


def asked_of(wanted: Happening) -> Iterator[str]:
    """Yield the findings of which a happening asks what is known."""
    yield from (*wanted.known, *wanted.unless_known, *wanted.stale, *wanted.unknown)
    for condition in (
        wanted.surely,
        wanted.possibly,
        wanted.unless_surely,
        wanted.unless_possibly,
    ):
        yield from (name for name, _ in condition.terms)


def warned_of(step: Step) -> frozenset[str]:
    """Return the acts of which a step shows a danger or a warning."""
    acts: set[str] = set()
    for caution in step.cautions:
        if caution.signal in (SignalWord.DANGER, SignalWord.WARNING):
            own = step.lines if isinstance(step, Action) else ()
            acts |= {caution.guards} if caution.guards else {each.act for each in own if each.act}
    return frozenset(acts)


def lines_shown(step: Step, lines: Iterable[Line]) -> Iterator[Event]:
    for line in lines:
        yield Event(act=line.act, by=line.who, warns_of=warned_of(step))
