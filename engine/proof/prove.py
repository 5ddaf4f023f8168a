"""Proving rules on every walk of a pathway, handovers followed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.exploration.unswept import unswept
from chamberwise.engine.meaning.layout import Field, layout_of
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.rule import AnyOf, Rule
from chamberwise.engine.model.step import Handover, PathwayId, Step
from chamberwise.engine.proof.counterexample import counterexample
from chamberwise.engine.proof.counting import by_bounds
from chamberwise.engine.proof.rules import rules_for
from chamberwise.engine.proof.run import Order, Run, run
from chamberwise.engine.proof.verdict import Holds, Proof, Unproven, Verdict, Violated

MOST_STATES = 3_000_000


@dataclass(frozen=True, slots=True)
class _Task:
    library: Library
    pathway: PathwayId
    most: int
    reduced: bool

    def ever_closer(
        self, rules: Sequence[Rule], counted: frozenset[Place], *, by_counts: bool
    ) -> Iterator[tuple[Sequence[Rule], Run]]:
        """Yield searches with more walks than there are, each for the rules that still may break.

        Where counts alone decide, the first forgets all that is known. Where a rule breaks, the
        bounds of the pathway in which it broke are counted as well.
        """
        if by_counts and all(map(_speaks_of_events, rules)):
            freely = self._run(rules, counted, is_free=True)
            yield rules, freely
            rules = [rule for at, rule in enumerate(rules) if not freely.holds(at)]
        while rules:
            loosely = self._run(rules, counted)
            yield rules, loosely
            broken_in = [loosely.broken_in(at) for at in range(len(rules))]
            more = frozenset().union(*(_bounded(self.library, name) for name in broken_in))
            if more <= counted:
                return
            rules = [rule for rule, name in zip(rules, broken_in, strict=True) if name]
            counted |= more

    def exactly(self, rules: Sequence[Rule], *, stop_at_first: bool) -> Run:
        """Return the search through the walks there are, shorter ones first."""
        fields = tracked_fields(self.library, self.pathway, rules)
        program = compiled(self.library, self.pathway, fields)
        order = Order.FIRST_BREAK if stop_at_first else Order.BY_LENGTH
        return run(program, self.pathway, rules, order, self.most, reduced=self.reduced)

    def _run(
        self, rules: Sequence[Rule], counted: frozenset[Place], *, is_free: bool = False
    ) -> Run:
        fields = tracked_fields(self.library, self.pathway, rules)
        everywhere = (_bounded(self.library, name) for name in self.library.pathways)
        uncounted = frozenset().union(*everywhere) - counted
        program = compiled(self.library, self.pathway, fields, uncounted, is_free=is_free)
        return run(program, self.pathway, rules, Order.BY_RANK, self.most, reduced=self.reduced)


@unswept()
def prove(
    library: Library,
    pathway: PathwayId,
    rules: Sequence[Rule] | None = None,
    *,
    stop_at_first: bool = False,
    most: int = MOST_STATES,
    reduced: bool = True,
) -> Proof:
    """Return the verdicts on some rules, or on all that bind the pathway.

    Names have to be defined. First no more bounds are counted than a rule needs: there are more
    walks then, and what holds on them all holds. Only what breaks is looked at again with every
    bound counted, shorter walks first. With `stop_at_first` that search ends with the first rule
    broken, and what is not settled by then is unproven; `reduced` forgets what can no longer be
    read.
    """
    rules = tuple(rules_for(library, pathway) if rules is None else rules)
    task = _Task(library, pathway, most, reduced)
    found: dict[Rule, Verdict] = {}
    seen = 0
    held: set[Rule] = set()
    vacuous: set[Rule] = set()
    for needed, some in by_bounds(library, pathway, rules).items():
        counted = needed or _last(library, pathway)
        for asked, loosely in task.ever_closer(some, counted, by_counts=bool(needed)):
            seen += loosely.found.states
            vacuous.update(rule for at, rule in enumerate(asked) if loosely.is_vacuous(at))
            held.update(rule for at, rule in enumerate(asked) if loosely.holds(at))
    doubtful = [rule for rule in rules if rule not in held]
    if doubtful:
        exactly = task.exactly(doubtful, stop_at_first=stop_at_first)
        seen += exactly.found.states
        found = {
            rule: _verdict(library, exactly, at, rule, is_vacuous=rule in vacuous)
            for at, rule in enumerate(doubtful)
        }
    verdicts = [found.get(rule) or Holds(rule, rule in vacuous) for rule in rules]
    return Proof(pathway, seen, tuple(verdicts))


def _verdict(library: Library, found: Run, number: int, rule: Rule, *, is_vacuous: bool) -> Verdict:
    if found.breaks(number):
        return Violated(rule, counterexample(library, found, number, rule))
    if found.holds(number):
        return Holds(rule, is_vacuous)
    if found.stopped:
        return Unproven(rule, f"there are more than {found.found.states:,} states")
    return Unproven(rule, "the search ended with the first rule that broke")


def _bounded(library: Library, pathway: PathwayId | None) -> frozenset[Place]:
    """Return the bounded steps of a pathway; none of no pathway."""
    steps = library.pathways[pathway].steps.values() if pathway is not None else ()
    return frozenset(Place(pathway or "", step.id) for step in steps if step.bound)


def _last(library: Library, pathway: PathwayId) -> frozenset[Place]:
    """Return the bounded steps of pathways reached that lead for good into no other.

    They come last, and their counts multiply little.
    """
    return frozenset().union(
        *(
            _bounded(library, name)
            for name in library.pathways
            if name != pathway and not any(map(_is_for_good, library.pathways[name].steps.values()))
        )
    )


def _is_for_good(step: Step) -> bool:
    return isinstance(step, Handover) and not step.on_return


def _speaks_of_events(rule: Rule) -> bool:
    return all(each == each.event for any_of in _roles(rule) for each in any_of)


def _roles(rule: Rule) -> tuple[AnyOf, ...]:
    return rule.of, rule.by, rule.scope.opens, rule.scope.closes


def tracked_fields(library: Library, pathway: PathwayId, rules: Sequence[Rule]) -> list[Field]:
    """Return the findings of which some rule asks whether they are stale or never known."""
    names = dict.fromkeys(name for rule in rules for name in _asked_if_stale(rule))
    return [layout_of(library).field(pathway, name) for name in names]


def _asked_if_stale(rule: Rule) -> Iterator[str]:
    for any_of in _roles(rule):
        for each in any_of:
            yield from (*each.stale, *each.unknown)
