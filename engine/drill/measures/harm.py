"""Harmful acts, named: the pathway's own safety rules watch the run as they watch a walk.

A rule counts as broken when no way of going on could still keep it. What a rule has shown to
be due but is not yet done breaks nothing: a drill stops somewhere. Ignorance counts against an act
here as on a walk; that it was safe in this eye all the same is told apart.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

from chamberwise.engine.drill.entries import Did
from chamberwise.engine.drill.run import Event, Run
from chamberwise.engine.meaning.happens import happens, shows_event
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.moments import Moment
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.rule import CHAINS, AnyOf, HarmSeverity, Rule
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.words import FindingId
from chamberwise.engine.patterns.machine import Machine, machine_of
from chamberwise.engine.patterns.published import formula_of

GRAVE = frozenset({HarmSeverity.CATASTROPHIC, HarmSeverity.CRITICAL})
"""Harms that keep the first gate shut; lesser ones are named all the same."""

_RANKS = {severity: rank for rank, severity in enumerate(HarmSeverity)}


@dataclass(frozen=True, slots=True)
class Broken:
    """A rule that was broken. By luck alone it was safe where the truth would have allowed it."""

    rule: Rule
    was_lucky: bool
    is_never_right: bool = False
    """Whether the act is one that drills name as never right."""

    @property
    def is_grave(self) -> bool:
        """Whether it keeps the first gate shut."""
        return self.is_never_right or (self.rule.severity in GRAVE and not self.was_lucky)


@dataclass(frozen=True, slots=True)
class Harmful:
    """One act or look that broke safety rules, the worst first and the lucky last."""

    event: Event
    broken: tuple[Broken, ...]

    @property
    def is_grave(self) -> bool:
        """Whether any of it keeps the first gate shut."""
        return any(each.is_grave for each in self.broken)

    @property
    def was_lucky(self) -> bool:
        """Whether nothing about it would have harmed this eye."""
        return all(each.was_lucky for each in self.broken)


@dataclass(frozen=True, slots=True)
class _Watch:
    rule: Rule
    machine: Machine
    roles: tuple[AnyOf, ...]
    names: frozenset[str]
    """The acts and findings whose moments it looks at."""
    looks_at_all: bool
    asked_for: frozenset[FindingId]
    """The findings that it only asks to be looked at."""

    @property
    def only_acts(self) -> bool:
        """Whether it passes over every moment in which no act is done."""
        return self.rule.pattern in CHAINS


def harmful(library: Library, run: Run) -> tuple[Harmful, ...]:
    """Return what broke a rule, in the order of the run."""
    pathway = run.began.pathway
    known = [_moment(library, run, event) for event in run.events]
    true = [_in_truth(library, pathway, *each) for each in zip(run.events, known, strict=True)]
    broken: dict[int, list[Broken]] = {}
    for watch in _made(run.rules):
        at = _lost_at(library, run, watch, [_as_done(run, *each) for each in enumerate(known)])
        if at is not None:
            broken.setdefault(at, []).append(Broken(watch.rule, False, is_never_right=True))
    for watch in _watches(library, pathway):
        at = _lost_at(library, run, watch, known)
        if at is not None:
            in_truth = _lost_at(library, run, watch, true)
            was_lucky = in_truth is None
            at = at if in_truth is None else in_truth
            broken.setdefault(at, []).append(Broken(watch.rule, was_lucky))
    return tuple(
        Harmful(run.events[at], tuple(sorted(rules, key=_worst_first)))
        for at, rules in sorted(broken.items())
    )


def _worst_first(broken: Broken) -> tuple[bool, bool, int]:
    return not broken.is_never_right, broken.was_lucky, _RANKS[broken.rule.severity]


@lru_cache(maxsize=16)
def _watches(library: Library, pathway: PathwayId) -> tuple[_Watch, ...]:
    return tuple(_made(library.words(pathway).rules.values()))


def _made(rules: Iterable[Rule]) -> Iterator[_Watch]:
    for rule in rules:
        roles = {"P": rule.of, "S": rule.by, "Q": rule.scope.opens, "R": rule.scope.closes}
        happenings = [each for any_of in roles.values() for each in any_of]
        if any(each.warns_of or each.hands_over_to or each.outcomes for each in happenings):
            continue  # it speaks of what only a chart does: to warn, to hand over, to end
        machine = machine_of(formula_of(rule.pattern, rule.scope.extent, rule.times))
        if machine.lost is not None:
            yield _Watch(
                rule,
                machine,
                tuple(roles[name] for name in machine.atoms),
                frozenset(name for each in happenings for name in (*each.acts, *each.asks)),
                any(not each.acts and not each.asks for each in happenings),
                _asked_for(rule),
            )


def _asked_for(rule: Rule) -> frozenset[FindingId]:
    """Return the findings whose being looked at keeps a rule and never breaks it."""
    others = (*rule.of, *rule.scope.opens, *rule.scope.closes)
    forbidden = {finding for each in others for finding in each.asks}
    return frozenset(finding for each in rule.by for finding in each.asks) - forbidden


def _moment(library: Library, run: Run, event: Event) -> Moment:
    """Return the moment of an event; a look is judged by what is known once it has been made."""
    pathway = run.began.pathway
    here = Place(pathway, library.pathways[pathway].start)
    bare = Moment(here, event.possible, event.last_seen, by=event.entry.who)
    if isinstance(event.entry, Did):
        act = event.entry.act
        return replace(bare, act=run.counts_as.get(act, act))
    field = layout_of(library).field(pathway, event.entry.finding)
    seen = field.bits.get(event.entry.saw or "", 0)
    possible, last_seen = bare.possible, bare.last_seen
    if seen:
        possible, last_seen = possible & ~field.every | seen, last_seen & ~field.every
    return replace(bare, asks=event.entry.finding, possible=possible, last_seen=last_seen)


def _as_done(run: Run, number: int, moment: Moment) -> Moment:
    """Return a moment with the act that was done, whatever other rules take it for."""
    entry = run.events[number].entry
    return replace(moment, act=entry.act) if isinstance(entry, Did) else moment


def _in_truth(library: Library, pathway: PathwayId, event: Event, moment: Moment) -> Moment:
    """Return a moment as it would be for a team that knew all there is to know."""
    possible, last_seen = moment.possible, moment.last_seen
    for field in layout_of(library).fields(pathway):
        true = field.bits.get(event.truth.get(field.finding.id, ""), 0)
        if true:
            possible, last_seen = possible & ~field.every | true, last_seen & ~field.every
    return replace(moment, possible=possible, last_seen=last_seen)


def _lost_at(library: Library, run: Run, watch: _Watch, moments: list[Moment]) -> int | None:
    """Return the event at which a rule was lost; None also where it was before the drill began."""
    state = 0
    numbered = [(-1, each) for each in run.so_far]
    numbered += [(n, each) for n, own in enumerate(moments) for each in _glanced(run, watch, own)]
    for number, moment in numbered:
        if watch.only_acts and moment.act is None:
            continue
        letter = 0
        if watch.looks_at_all or (moment.act or moment.asks) in watch.names:
            letter = _letter(library, run.began.pathway, watch, moment)
        state = watch.machine.after[state][letter]
        if state == watch.machine.lost:
            return number if number >= 0 else None
    return None


def _glanced(run: Run, watch: _Watch, moment: Moment) -> Iterator[Moment]:
    """Yield a moment; before an act, also a look at what is seen without looking."""
    if moment.act is not None:
        for finding in run.at_a_glance:
            if finding in watch.asked_for:
                yield replace(moment, act=None, by=None, asks=finding)
    yield moment


def _letter(library: Library, pathway: PathwayId, watch: _Watch, moment: Moment) -> int:
    letter = 0
    for place, any_of in enumerate(watch.roles):
        shown = any(shows_event(each, moment) for each in any_of)
        if shown and happens(library, pathway, any_of, moment):
            letter |= 1 << place
    return letter
