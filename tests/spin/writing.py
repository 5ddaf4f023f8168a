"""A pathway and a rule as a table of numbers for `walk.pml`, read from the model and nothing else.

Only what walks from the entry can come to is written: its pathways, their findings. The layout
stands in `walk.h`, at each place that reads it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import CHAINS, Happening, Rule
from chamberwise.engine.model.step import (
    CANNOT_TELL,
    Action,
    Branch,
    Handover,
    Outcome,
    Question,
    Step,
)
from chamberwise.engine.model.words import Effects, Finding

from tests.spin.events import Event, asked_of, happenings, lines_shown, warned_of
from tests.spin.forgetting import needed, owned
from tests.spin.formulas import is_kept_apart, kind_of, saving

Ops = list[tuple[int, int]]
SURELY, POSSIBLY, KNOWN, STALE, UNKNOWN = range(5)
NOTHING = 0


@dataclass
class Table:
    """One pathway and one rule in numbers. Offsets count from the start of the table."""

    library: Library
    entry: str
    rule: Rule
    pathways: list[str] = field(default_factory=list)
    place: dict[tuple[str, str], int] = field(default_factory=dict)
    finding: dict[tuple[str, str], int] = field(default_factory=dict)
    bound: dict[tuple[str, str], int] = field(default_factory=dict)
    depth: int = 1
    _moments: list[list[int]] = field(default_factory=list)
    _conditions: list[list[int]] = field(default_factory=list)
    _parts: list[list[int]] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.pathways = _reached(self.library, self.entry)
        self.depth = len(self.pathways)
        for name in self.pathways:
            for step in self.library.pathways[name].steps:
                self.place[name, step] = len(self.place)
        shared, pathways = self.library.shared, self.library.pathways
        for name in shared.findings:
            self.finding["", name] = len(self.finding)
        for pathway in self.pathways:
            for name in pathways[pathway].words.findings:
                self.finding[pathway, name] = len(self.finding)
        for name, step in self.place:
            if pathways[name].steps[step].bound:
                self.bound[name, step] = len(self.bound)
        self._needed = needed(self.library, self.pathways)

    def numbers(self) -> list[int]:
        """Return the table, its length first."""
        steps = [
            self._step(pathway, self.library.pathways[pathway].steps[name])
            for pathway, name in self.place
        ]
        head = 7 + 3 * len(self.finding) + len(steps) + len(self._moments) + len(self._conditions)
        blocks = [*steps, *self._moments, *self._conditions, *self._parts]
        offsets, at = [], head
        for block in blocks:
            offsets.append(at)
            at += len(block)
        of_parts = offsets[len(blocks) - len(self._parts) :]
        body = [number for block in blocks for number in _resolved(block, of_parts)]
        first = self.place[self.entry, self.library.pathways[self.entry].start]
        apart = int(is_kept_apart(kind_of(self.rule)))
        counts = [len(self.finding), len(steps), len(self._moments), len(self._conditions)]
        fields = [number for key in self.finding for number in self._field(key)]
        whole = [
            *counts,
            first,
            saving(self.rule),
            apart,
            *fields,
            *offsets[: len(offsets) - len(of_parts)],
        ]
        return [len(whole) + len(body), *whole, *body]

    def _field(self, key: tuple[str, str]) -> tuple[int, int, int]:
        found = self._said(key)
        every = (1 << len(found.values)) - 1
        chosen = found.choice.chosen if found.choice else None
        first = self._bits(key, [chosen]) if chosen else 0
        asked = {name for each in happenings(self.rule) for name in (*each.stale, *each.unknown)}
        tracked = key in {self._key(self.entry, name) for name in asked}
        return every, first or every, int(tracked)

    def _key(self, pathway: str, name: str) -> tuple[str, str]:
        return owned(self.library, pathway, name)

    def _said(self, key: tuple[str, str]) -> Finding:
        pathway, name = key
        words = self.library.pathways[pathway].words if pathway else self.library.shared
        return words.findings[name]

    def _bits(self, key: tuple[str, str], values: Iterable[str]) -> int:
        names = [value.id for value in self._said(key).values]
        assert len(names) <= 8
        return sum(1 << names.index(value) for value in set(values) if value in names)

    def _step(self, pathway: str, step: Step) -> list[int]:
        bound = [-1, 0, 0]
        if step.bound:
            number = self.bound[pathway, step.id]
            bound = [number, step.bound.at_most, self.place[pathway, step.bound.after_that]]
        rest = {
            Question: self._question,
            Action: self._action,
            Branch: self._branch,
            Handover: self._handover,
            Outcome: self._outcome,
        }
        kind = list(rest).index(type(step))
        return [
            kind,
            self.pathways.index(pathway),
            *bound,
            self._forgotten(pathway, step),
            *rest[type(step)](pathway, step),  # type: ignore[operator]
        ]

    def _forgotten(self, pathway: str, step: Step) -> int:
        """Return what nothing asks any more at a step: findings, then counts."""
        kept = self._needed[pathway, step.id] | {
            owned(self.library, self.entry, name)
            for each in happenings(self.rule)
            for name in asked_of(each)
        }
        findings = [number for key, number in self.finding.items() if key not in kept]
        counts = [at for (name, id_), at in self.bound.items() if (name, f"#{id_}") not in kept]
        return self._part([len(findings), *findings, len(counts), *counts])

    def _question(self, pathway: str, step: Question) -> Iterator[int]:
        key = self._key(pathway, step.ask)
        yield from (self.finding[key], len(step.answers))
        moment = self._moment(Event(asks=step.ask, warns_of=warned_of(step)))
        for answer in step.answers:
            bits = -1 if answer.id == CANNOT_TELL else self._bits(key, answer.means)
            yield from (bits, moment, self.place[pathway, answer.go_to])

    def _action(self, pathway: str, step: Action) -> Iterator[int]:
        words = self.library.words(pathway)
        of_lines = [
            self._ops(pathway, words.acts[line.act].effects)
            if line.act and line.act in words.acts
            else []
            for line in step.lines
        ]
        own = self._ops(pathway, step.effects)
        made_known = {number for ops in (*of_lines, own) for number, bits in ops if bits}
        restless: Ops = [
            (number, NOTHING)
            for key, number in self.finding.items()
            if self._said(key).may_change_by_itself and number not in made_known
        ]
        yield from (self.place[pathway, step.go_to], self._change([*own, *restless]))
        yield len(step.lines)
        for event, ops in zip(lines_shown(step, step.lines), of_lines, strict=True):
            yield from (self._moment(event), self._change(ops))

    def _branch(self, pathway: str, step: Branch) -> Iterator[int]:
        for target in (step.otherwise, step.not_known):
            yield -1 if target is None else self.place[pathway, target]
        yield len(step.rows)
        for row in step.rows:
            yield self.place[pathway, row.go_to]
            yield self._test(pathway, SURELY, row.when)
            yield self._test(pathway, POSSIBLY, row.when)

    def _handover(self, pathway: str, step: Handover) -> Iterator[int]:
        yield self.place[step.to, self.library.pathways[step.to].start]
        yield self.pathways.index(step.to)
        yield self._moment(Event(hands_over_to=step.to, warns_of=warned_of(step)))
        yield len(step.on_return)
        for outcome, target in step.on_return:
            yield from (self.place[step.to, outcome], self.place[pathway, target])

    def _outcome(self, pathway: str, step: Outcome) -> Iterator[int]:
        moments = [*lines_shown(step, step.owed), Event(outcome=step.id, warns_of=warned_of(step))]
        yield int(pathway == self.entry and self._is_come_back_by(step.id))
        yield len(moments)
        yield from map(self._moment, moments)

    def _is_come_back_by(self, outcome: str) -> bool:
        return any(
            isinstance(step, Handover) and step.to == self.entry and outcome in dict(step.on_return)
            for each in self.library.pathways.values()
            for step in each.steps.values()
        )

    def _ops(self, pathway: str, effects: Effects) -> Ops:
        stale = [(self.finding[self._key(pathway, name)], NOTHING) for name in effects.stale]
        known = [
            (self.finding[self._key(pathway, name)], self._bits(self._key(pathway, name), values))
            for name, values in effects.known
        ]
        return [*stale, *known]

    def _change(self, ops: Ops) -> int:
        return self._part([len(ops), *(number for op in ops for number in op)])

    def _test(self, pathway: str, kind: int, condition: Condition) -> int:
        tests = [
            (kind, self.finding[key], self._bits(key, values))
            for name, values in condition.terms
            for key in [self._key(pathway, name)]
        ]
        return self._part([len(tests), *(number for test in tests for number in test)])

    def _part(self, block: list[int]) -> int:
        """Keep a block; return a mark for its offset, which is not known yet."""
        self._parts.append(block)
        return MARK + len(self._parts) - 1

    def _moment(self, event: Event) -> int:
        rule = self.rule
        block = [int(rule.pattern not in CHAINS or event.act is not None)]
        for any_of in (rule.of, rule.scope.opens, rule.scope.closes, rule.by):
            due = [self._condition(each) for each in any_of if event.shows(each)]
            block += [len(due), *due]
        self._moments.append(block)
        return len(self._moments) - 1

    def _condition(self, wanted: Happening) -> int:
        parts = [
            (0, self._test(self.entry, SURELY, wanted.surely)),
            (0, self._test(self.entry, POSSIBLY, wanted.possibly)),
            (0, self._names(KNOWN, wanted.known)),
            (0, self._names(STALE, wanted.stale)),
            (0, self._names(UNKNOWN, wanted.unknown)),
        ]
        if wanted.unless_surely.terms:
            parts.append((1, self._test(self.entry, SURELY, wanted.unless_surely)))
        if wanted.unless_possibly.terms:
            parts.append((1, self._test(self.entry, POSSIBLY, wanted.unless_possibly)))
        if wanted.unless_known:
            parts.append((1, self._names(KNOWN, wanted.unless_known)))
        self._conditions.append([len(parts), *(number for part in parts for number in part)])
        return len(self._conditions) - 1

    def _names(self, kind: int, names: Iterable[str]) -> int:
        every = Condition(tuple((name, ()) for name in names))
        return self._test(self.entry, kind, every)


MARK = 1_000_000


def _resolved(block: list[int], of_parts: list[int]) -> list[int]:
    return [of_parts[number - MARK] if number >= MARK else number for number in block]


def _reached(library: Library, entry: str) -> list[str]:
    names = [entry]
    for name in names:  # grows while it is gone through
        for step in library.pathways[name].steps.values():
            if isinstance(step, Handover) and step.to not in names:
                names.append(step.to)
    return names
