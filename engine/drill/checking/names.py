"""Every name a drill file uses, with its place."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from chamberwise.engine.checks.references import Of
from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.drill import DrillBook, Inject, Opening, Phrases, TruthBook

STEP = "step"
OPENING = "opening"
INJECT = "inject"


@dataclass(frozen=True, slots=True)
class Named:
    """One use of a name: what it is the name of, and of which finding where it is a value."""

    of: str
    name: str
    pointer: Pointer
    value_of: str | None = None


def of_truth(truth: TruthBook) -> Iterator[Named]:
    """Yield every name in the file of what acts do."""
    for act, harm in truth.harms.items():
        at: Pointer = ("wrong acts", act)
        if harm.counts_as:
            yield Named(Of.ACT, harm.counts_as, (*at, "counts as"))
        yield from _each(Of.SOURCE, harm.sources, (*at, "sources"))
    for act, each in truth.acts.items():
        at = ("wrong acts" if act in truth.harms else "other acts", act)
        for finding, values in each.effects.known:
            yield from _values(finding, values, (*at, "makes known", finding))
        yield from _each(Of.FINDING, each.effects.stale, (*at, "makes stale"))
    for act, in_truth in truth.in_truth.items():
        at = ("in truth", act)
        yield Named(Of.ACT, act, at)
        yield from _condition(in_truth.only_while, (*at, "only while"))
        for place, turn in enumerate(in_truth.turns):
            here: Pointer = (*at, "turns", place)
            yield from _settings(turn.becomes, (*here, "becomes"))
            yield from _condition(turn.when, (*here, "when"))
            yield from _condition(turn.unless, (*here, "unless"))
            yield from _each(Of.ACT, turn.unless_done, (*here, "unless done"))
            yield from _each(Of.ACT, turn.once_done, (*here, "once done"))
            yield from _each(Of.ACT, turn.since, (*here, "since"))
            yield from _each(Of.SOURCE, turn.sources, (*here, "sources"))
    yield from _of_seen(truth)


def _of_seen(truth: TruthBook) -> Iterator[Named]:
    for (finding, value), every in truth.seen_as.items():
        yield from _values(finding, (value,), ("seen as", finding))
        for place, seen in enumerate(every):
            at: Pointer = ("seen as", finding, value, place)
            yield from _condition(seen.when, (*at, "while"))
            yield from _each(Of.ACT, seen.unless_done, (*at, "unless done"))


def of_phrases(phrases: Phrases) -> Iterator[Named]:
    """Yield every name in the file of phrases."""
    for act in phrases.acts:
        yield Named(Of.ACT, act, ("acts", act))
    for finding in phrases.looks:
        yield Named(Of.FINDING, finding, ("looks", finding))


def of_book(book: DrillBook) -> Iterator[Named]:
    """Yield every name in a book of drills."""
    yield Named(Of.ACT, book.announce, ("announce",))
    yield from _each(STEP, book.ends_at, ("ends at",))
    yield from _each(Of.FINDING, book.at_a_glance, ("at a glance",))
    for finding, weights in book.truth:
        yield from _values(finding, (value for value, _ in weights), ("truth", finding))
    for place, (condition, findings) in enumerate(book.unseen):
        yield from _condition(condition, ("unseen", place, "while"))
        yield from _each(Of.FINDING, findings, ("unseen", place, "findings"))
    for opening in book.openings:
        yield from _of_opening(opening)
    for inject in book.injects:
        yield from _of_inject(inject)
    yield from _of_acts(book)
    yield from _of_tasks(book)
    yield from _of_scenarios(book)


def _of_opening(opening: Opening) -> Iterator[Named]:
    at: Pointer = ("openings", opening.id)
    yield from _settings(opening.known, (*at, "known"))
    for finding, weights in opening.truth:
        yield from _values(finding, (value for value, _ in weights), (*at, "truth", finding))
    for act, _ in opening.calls:
        yield Named(Of.ACT, act, (*at, "calls", act))
    yield from _each(Of.SOURCE, opening.sources, (*at, "sources"))


def _of_inject(inject: Inject) -> Iterator[Named]:
    at: Pointer = ("injects", inject.id)
    if inject.after:
        yield Named(Of.ACT, inject.after, (*at, "after"))
    yield from _condition(inject.when, (*at, "when"))
    yield from _settings(inject.becomes, (*at, "becomes"))
    for reply in inject.replies:
        here: Pointer = (*at, "replies", reply.act)
        if not reply.title:
            yield Named(Of.ACT, reply.act, here)
        yield from _settings(reply.becomes, (*here, "becomes"))


def _of_acts(book: DrillBook) -> Iterator[Named]:
    for place, due in enumerate(book.critical):
        yield Named(Of.ACT, due.act, ("critical", place, "act"))
        if due.once:
            yield Named(Of.ACT, due.once, ("critical", place, "once"))
        yield from _each(Of.SOURCE, due.sources, ("critical", place, "sources"))
    for place, order in enumerate(book.orders):
        yield Named(Of.ACT, order.first, ("orders", place, "first"))
        yield Named(Of.ACT, order.then, ("orders", place, "then"))


def _of_tasks(book: DrillBook) -> Iterator[Named]:
    for task in book.tasks:
        at: Pointer = ("tasks", task.id)
        yield Named(Of.DUTY, task.who, (*at, "who"))
        yield from _each(Of.DUTY, task.otherwise, (*at, "or"))
        if task.act:
            yield Named(Of.ACT, task.act, (*at, "act"))


def _of_scenarios(book: DrillBook) -> Iterator[Named]:
    for each in book.scenarios:
        at: Pointer = ("scenarios", each.id)
        yield Named(OPENING, each.opening, (*at, "opening"))
        yield from _settings(each.truth, (*at, "truth"))
        yield from _each(INJECT, each.injects or (), (*at, "injects"))
        yield from _each(STEP, each.ends_at, (*at, "ends at"))
        if each.begins_at:
            yield Named(STEP, each.begins_at, (*at, "begins at"))


def _each(of: str, names: Iterable[str], at: Pointer) -> Iterator[Named]:
    for place, name in enumerate(names):
        yield Named(of, name, (*at, place))


def _settings(settings: Iterable[tuple[str, str]], at: Pointer) -> Iterator[Named]:
    for finding, value in settings:
        yield from _values(finding, (value,), (*at, finding))


def _condition(condition: Condition, at: Pointer) -> Iterator[Named]:
    for finding, values in condition.terms:
        yield from _values(finding, values, (*at, finding))


def _values(finding: str, values: Iterable[str], at: Pointer) -> Iterator[Named]:
    yield Named(Of.FINDING, finding, at)
    for value in values:
        yield Named(Of.FINDING, value, at, value_of=finding)
