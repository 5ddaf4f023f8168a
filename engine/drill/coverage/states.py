"""Every state a walk can come to, with the answer of each move and the rules that it sets off."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from chamberwise.engine.drill.coverage.guide import Guide
from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import RuleId
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.proof.monitors import Monitor, monitors
from chamberwise.engine.proof.shots import Shots
from chamberwise.engine.proof.states import States


@dataclass(frozen=True, slots=True)
class Triggers:
    """The machines that tell whether rules arise, and the rules that arise on every walk."""

    monitors: tuple[Monitor, ...]
    rules: tuple[RuleId, ...]
    """By machine, the rule that it belongs to."""
    always: frozenset[RuleId]


def triggers_of(library: Library, pathway: PathwayId) -> Triggers:
    """Return the triggers of the rules that bind a pathway."""
    rules = list(library.words(pathway).rules.values())
    watching = monitors(rules)
    found = tuple(each for each in watching if each.is_trigger)
    named = tuple(rules[each.rule].id for each in found)
    return Triggers(found, named, frozenset(rule.id for rule in rules) - set(named))


class StateGraph(States):
    """The states of a pathway, opened as they are needed, each with its spot on the map."""

    def __init__(self, library: Library, pathway: PathwayId, guide: Guide) -> None:
        program = compiled(library, pathway)
        self.triggers = triggers_of(library, pathway)
        self._watching = Shots(self.triggers.monitors, program, pathway)
        super().__init__(program, self._watching, self._watching.everywhere())
        self._guide = guide
        self._spot_at: dict[int, int] = {}
        self._ways: dict[int, Sequence[tuple[int, int, int]]] = {}

    def spot(self, state: int) -> int:
        """Return where on the map a state is."""
        number = self._key_of[state] >> self._width
        found = self._spot_at.get(number)
        if found is None:
            stack, node = self._keys.apart(number)
            nodes = self.program.nodes
            way_back = tuple(nodes[handover].place for handover in self._stacks[stack])
            found = self._spot_at[number] = self._guide.number[way_back, nodes[node].place]
        return found

    def ways(self, state: int) -> Sequence[tuple[int, int, int]]:
        """Return the moves: of each the bit of its answer or 0, its shot, and the state led to."""
        found = self._ways.get(state)
        if found is None:
            self.open(state)
            begin = self.begin[state]
            end = begin + self.count[state]
            answers = self._answers(state) or [0] * (end - begin)
            shots, targets = self.shot_of[begin:end], self.targets[begin:end]
            found = self._ways[state] = list(zip(answers, shots, targets, strict=True))
        return found

    def known_ways(self, state: int) -> Sequence[tuple[int, int, int]]:
        """Return the moves of a state that was opened before, else none."""
        return self._ways.get(state, ())

    def _answers(self, state: int) -> list[int]:
        node = self.program.nodes[self.at[state]]
        if not node.asked:
            return []
        key, answers = self._key_of[state], self._guide.answers
        return [
            answers[node.place, name]
            for name, needs, _, _, _ in node.ways
            if not needs or key & needs
        ]

    def shots_for(self, rule: RuleId) -> frozenset[int]:
        """Return the shots that may set a rule off, or bring it nearer to that."""
        machines = {n for n, name in enumerate(self.triggers.rules) if name == rule}
        changes, loses = self._watching.changes, self._watching.loses
        return frozenset(
            shot
            for shot in range(len(changes))
            if machines & {machine for machine, _ in changes[shot]} or machines & set(loses[shot])
        )

    def set_off(self, shots: Sequence[int]) -> frozenset[RuleId]:
        """Return the rules that a walk sets off, by the shots of its moves."""
        machines = self.triggers.monitors
        at = [0] * len(machines)
        lost: set[int] = set()
        for shot in shots:
            lost.update(self._watching.loses[shot])
            for machine, after in self._watching.changes[shot]:
                at[machine] = after[at[machine]]
                if at[machine] == machines[machine].machine.lost:
                    lost.add(machine)
        return self.triggers.always | {self.triggers.rules[machine] for machine in lost}
