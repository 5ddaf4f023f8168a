"""What a rule asks of knowledge, as comparisons of bits."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeAlias

from chamberwise.engine.exploration.program import Program
from chamberwise.engine.meaning.layout import Field
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.rule import Happening
from chamberwise.engine.model.step import PathwayId

Test: TypeAlias = Callable[[int], bool]


@dataclass(slots=True)
class Knowing:
    """Tests of bits in the words of the pathway whose walks are watched; `reads` are those bits."""

    program: Program
    entry: PathwayId
    reads: int = 0

    def all_of(self, wanted: Happening) -> Test:
        """Return the test of what one happening says of knowledge."""
        tests = [
            *self._surely(wanted.surely),
            *self._possibly(wanted.possibly),
            *_not_all(self._surely(wanted.unless_surely)),
            *_not_all(self._possibly(wanted.unless_possibly)),
            *(self._one_left(name) for name in wanted.known),
            *_not_all([self._one_left(name) for name in wanted.unless_known]),
            *(self._stale(name) for name in wanted.stale),
            *(self._unknown(name) for name in wanted.unknown),
        ]
        return tests[0] if len(tests) == 1 else lambda bits: all(test(bits) for test in tests)

    def _field(self, name: str) -> Field:
        field = self.program.layout.field(self.entry, name)
        self.reads |= field.every | self.program.tracked.get(field.every, 0)
        return field

    def _surely(self, condition: Condition) -> list[Test]:
        if not condition.terms:
            return []
        ruled_out = 0
        for name, values in condition.terms:
            field = self._field(name)
            ruled_out |= field.every & ~field.mask(values)
        return [lambda bits: not bits & ruled_out]

    def _possibly(self, condition: Condition) -> list[Test]:
        masks = [self._field(name).mask(values) for name, values in condition.terms]
        return [_some_of(mask) for mask in masks]

    def _one_left(self, name: str) -> Test:
        every = self._field(name).every
        return lambda bits: (bits & every).bit_count() == 1

    def _stale(self, name: str) -> Test:
        return _some_of(self.program.tracked[self._field(name).every])

    def _unknown(self, name: str) -> Test:
        every = self._field(name).every
        stale = self.program.tracked[every]
        return lambda bits: bits & every == every and not bits & stale


def _some_of(mask: int) -> Test:
    return lambda bits: bits & mask != 0


def _not_all(tests: list[Test]) -> list[Test]:
    return [lambda bits: not all(test(bits) for test in tests)] if tests else []
