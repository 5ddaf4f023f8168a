"""The machines that watch a walk: one for each rule, one that tells whether the rule ever bites."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from chamberwise.engine.model.rule import CHAINS, AnyOf, Extent, Pattern, Rule
from chamberwise.engine.patterns.machine import Machine, machine_of
from chamberwise.engine.patterns.published import formula_of

_SAY_SO_ALONE = frozenset({Pattern.ABSENCE, Pattern.BOUNDED_EXISTENCE})
"""Patterns that forbid what they are of: they bite where the deed is done, whatever is known."""

_ASK_FOR_IT = frozenset({Pattern.EXISTENCE, Pattern.UNIVERSALITY})
"""Patterns that bite on every walk, or on every one that comes into their scope."""


@dataclass(frozen=True, slots=True)
class Monitor:
    """One machine with what its letters stand for. States are bits from `shift` on."""

    rule: int
    """Which of the rules it belongs to."""
    machine: Machine
    roles: tuple[AnyOf, ...]
    """What each atom of the machine stands for."""
    only_acts: bool
    shift: int
    is_trigger: bool

    @property
    def is_instant(self) -> bool:
        """Whether it has nothing to remember: any moment may lose it, and no history matters."""
        return len(self.machine.after) == 2 and self.machine.lost == 1 and 0 in self.machine.good

    @property
    def only_forbids(self) -> bool:
        """Whether every walk that has not lost it yet may end."""
        states = set(range(len(self.machine.after)))
        return self.is_trigger or states - {self.machine.lost} <= self.machine.good

    @property
    def lost(self) -> int:
        """The bit of the state in which it is lost, if there is one."""
        lost = self.machine.lost
        return 0 if lost is None or self.is_instant else 1 << (self.shift + lost)

    @property
    def bits(self) -> int:
        """The bits of all its states."""
        return 0 if self.is_instant else ((1 << len(self.machine.after)) - 1) << self.shift

    @property
    def not_good(self) -> int:
        """The bits of the states in which a walk must not end; none for a trigger."""
        if self.is_trigger or self.is_instant:
            return 0
        states = range(len(self.machine.after))
        return sum(1 << (self.shift + at) for at in states if at not in self.machine.good)


def monitors(rules: Sequence[Rule]) -> tuple[Monitor, ...]:
    """Return the machines of some rules, each rule's own and then its trigger."""
    return laid(
        Monitor(number, machine, stands_for, rule.pattern in CHAINS, 0, is_trigger)
        for number, rule in enumerate(rules)
        for machine, stands_for, is_trigger in _of(rule)
    )


def laid(watching: Iterable[Monitor]) -> tuple[Monitor, ...]:
    """Return machines side by side in one integer.

    Those that have nothing to remember take no bits.
    """
    found: list[Monitor] = []
    shift = 1  # the first bit is nobody's
    for monitor in watching:
        found.append(replace(monitor, shift=shift))
        shift += 0 if monitor.is_instant else len(monitor.machine.after)
    return tuple(found)


def _of(rule: Rule) -> Iterator[tuple[Machine, tuple[AnyOf, ...], bool]]:
    scope = rule.scope
    machine = machine_of(formula_of(rule.pattern, scope.extent, rule.times))
    roles = {"P": rule.of, "Q": scope.opens, "R": scope.closes, "S": rule.by}
    yield machine, tuple(roles[name] for name in machine.atoms), False
    trigger = _trigger(rule)
    if trigger is not None:
        of, extent = trigger
        never = machine_of(formula_of(Pattern.ABSENCE, extent))
        yield never, tuple({**roles, "P": of}[name] for name in never.atoms), True


def _trigger(rule: Rule) -> tuple[AnyOf, Extent] | None:
    """Return what must happen, and in which scope, for a rule to say anything; `None`: it does."""
    extent = rule.scope.extent
    if rule.pattern in _ASK_FOR_IT or _forbids_outright(rule):
        if extent is Extent.GLOBALLY:
            return None
        return (rule.scope.closes if extent is Extent.BEFORE else rule.scope.opens), Extent.GLOBALLY
    if rule.pattern in _SAY_SO_ALONE:
        return tuple(each.event for each in rule.of), extent
    return rule.of, extent


def _forbids_outright(rule: Rule) -> bool:
    """Whether it forbids something whatever is known: that it never happens is then the point."""
    outright = any(each == each.event for each in rule.of)
    return rule.pattern is Pattern.ABSENCE and outright
