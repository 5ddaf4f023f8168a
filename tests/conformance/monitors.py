"""What a safety rule can say of a trace; each maker returns a monitor.

A monitor returns what is wrong, or "" where nothing is. "While" means what was known when the step
began: a rule "never A while C" fails as soon as C is still possible.
"""

from __future__ import annotations

from collections.abc import Callable, Collection
from dataclasses import dataclass

from tests.conformance.trace import Event, Trace, possibly, surely

Monitor = Callable[[Trace], str]
Acts = tuple[str, ...]


@dataclass(frozen=True)
class Rule:
    """One of the 54 requirements, as far as a trace can show it."""

    number: int
    says: str
    sources: str
    """The numbered sources of the fact sheet, or the mark where there is none."""
    monitor: Monitor
    broken: Trace
    """A doctored trace that breaks it."""
    aside: str = ""
    """What the rule leaves out, and why."""


def before(then: Acts, first: Acts, since: Acts = ()) -> Monitor:
    """Before any of `then` one of `first` was done, later than the last of `since`."""

    def monitor(trace: Trace) -> str:
        firsts, resets = trace.did(*first), trace.did(*since)
        for place in trace.did(*then):
            after = max((reset for reset in resets if reset < place), default=-1)
            if not any(after < each < place for each in firsts):
                return f"{_at(trace.events[place])} without {' or '.join(first)} before it"
        return ""

    return monitor


def each_of(then: Acts, firsts: Acts, since: Acts = ()) -> Monitor:
    """Before any of `then` every one of `firsts` was done, later than the last of `since`."""
    return all_of(*(before(then, (first,), since) for first in firsts))


def only_while(acts: Acts, finding: str, *values: str) -> Monitor:
    """None of the acts is done unless the finding surely has one of the values."""

    def monitor(trace: Trace) -> str:
        for place in trace.did(*acts):
            event = trace.events[place]
            if not surely(event.known, finding, *values):
                return f"{_at(event)} while {finding} is {event.known.left(finding) or 'open'}"
        return ""

    return monitor


def at_most(times: int, *acts: str) -> Monitor:
    """All of the acts together are done no oftener than that."""

    def monitor(trace: Trace) -> str:
        return f"{' and '.join(acts)} too often" if len(trace.did(*acts)) > times else ""

    return monitor


def never(*acts: str) -> Monitor:
    return at_most(0, *acts)


def at_end(*responses: str, unless: Collection[str] = (), owed_counts: bool = True) -> Monitor:
    """One of the responses was done, or is owed, by the time the pathway ends."""

    def monitor(trace: Trace) -> str:
        if trace.end.name in unless:
            return ""
        found = trace.where("did", *responses)
        found += trace.where("owed", *responses) if owed_counts else []
        return "" if found else f"{trace.end.name} without {' or '.join(responses)}"

    return monitor


def ends_with(finding: str, *values: str, unless: Collection[str] = ()) -> Monitor:
    """At the end the finding surely has one of the values."""

    def monitor(trace: Trace) -> str:
        if trace.end.name in unless or surely(trace.end.known, finding, *values):
            return ""
        return f"{trace.end.name} with {finding} {trace.end.known.left(finding) or 'open'}"

    return monitor


def if_at_end(finding: str, *values: str, then: Monitor) -> Monitor:
    """Where the finding may have one of the values at the end, the other monitor holds."""
    return lambda trace: then(trace) if possibly(trace.end.known, finding, *values) else ""


def if_ended(*outcomes: str, then: Monitor) -> Monitor:
    """For walks that end in one of these outcomes, the other monitor holds."""
    return lambda trace: then(trace) if trace.end.name in outcomes else ""


def if_did(*acts: str, then: Monitor) -> Monitor:
    """Where any of the acts was done, the other monitor holds."""
    return lambda trace: then(trace) if trace.did(*acts) else ""


def if_not_did(*acts: str, then: Monitor) -> Monitor:
    """Where none of the acts was done, the other monitor holds."""
    return lambda trace: "" if trace.did(*acts) else then(trace)


def entered_by(*entries: str, then: Monitor) -> Monitor:
    """For walks that begin in one of these pathways, the other monitor holds."""
    return lambda trace: then(trace) if trace.entry in entries else ""


def all_of(*monitors: Monitor) -> Monitor:
    """Every monitor holds; the first that fails is told."""
    return lambda trace: next((wrong for each in monitors if (wrong := each(trace))), "")


def answered_before(acts: Acts, *findings: str, until: Acts = ()) -> Monitor:
    """Before any of the acts each finding was asked about, or something was known of it.

    Acts after one of `until` do not count.
    """

    def monitor(trace: Trace) -> str:
        stop = min(trace.did(*until), default=len(trace.events))
        for place in trace.did(*acts):
            for finding in findings:
                if place < stop and not _heard_of(trace, finding, place):
                    return f"{_at(trace.events[place])} before {finding} was asked"
        return ""

    return monitor


def _heard_of(trace: Trace, finding: str, place: int) -> bool:
    if any(each < place for each in trace.where("asked", finding)):
        return True
    return any(event.known.left(finding) is not None for event in trace.events[: place + 1])


def last_answer_before(acts: Acts, finding: str, *values: str, since: Acts = ()) -> Monitor:
    """The last answer before any of the acts was one of the values, later than any of `since`."""

    def monitor(trace: Trace) -> str:
        answers, resets = trace.where("asked", finding), trace.did(*since)
        for place in trace.did(*acts):
            after = max((reset for reset in resets if reset < place), default=-1)
            found = [each for each in answers if after < each < place]
            if not found or trace.events[found[-1]].answer not in values:
                return f"{_at(trace.events[place])} without {finding} {' or '.join(values)}"
        return ""

    return monitor


def _at(event: Event) -> str:
    return f"{event.name} at {event.step}" if event.step else event.name
