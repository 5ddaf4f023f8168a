"""At each step, every value that could be possible there: more than any walk leaves, never less.

A forward data flow over all findings at once, far cheaper than looking at the states. What it rules
out is ruled out; what it leaves open may still never come up.
"""

from __future__ import annotations

from collections.abc import Callable
from heapq import heappop, heappush

from chamberwise.engine.exploration.frame import Frame, frames
from chamberwise.engine.exploration.moves import action_effect, answer_masks
from chamberwise.engine.exploration.program import Call, Node, Program
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.step import CANNOT_TELL, Action, Branch, Question, StepId

Flow = tuple[StepId, int]
Flowing = Callable[[Place, int], None]


def widest(program: Program) -> dict[Place, int]:
    """Return, by step that arrows lead to, the bits of all values that could be possible there."""
    frame_of = frames(program)
    found: dict[Place, int] = {}
    waiting: list[tuple[int, Place]] = []  # nearest to the entry first, so that most come up once

    def flow(place: Place, bits: int) -> None:
        if place not in program.index:  # the exit of an entry that is never entered twice
            return
        if bits & ~found.get(place, 0) or place not in found:
            found[place] = found.get(place, 0) | bits
            heappush(waiting, (program.index[place], place))
            bound = program.library.step(place).bound
            if bound:
                flow(Place(place.pathway, bound.after_that), bits)

    first = program.nodes[0].place
    flow(first, program.first_bits & program.layout.every)
    while waiting:
        number, place = heappop(waiting)
        while waiting and waiting[0][0] == number:
            heappop(waiting)
        call = program.calls.get(number)
        if call is not None:
            _over_there(program, call, place, found[place], frame_of, flow)
        for target, bits in _onward(program, program.nodes[number], found[place]):
            flow(Place(place.pathway, target), bits)
    return found


def _onward(program: Program, node: Node, bits: int) -> list[Flow]:
    step, pathway = node.step, node.place.pathway
    if isinstance(step, Question):
        asked = program.layout.field(pathway, step.ask)
        rest = bits & ~asked.every
        return [
            (answer.go_to, bits if answer.id == CANNOT_TELL else rest | bits & mask)
            for answer, mask in answer_masks(step, asked)
            if answer.id == CANNOT_TELL or bits & mask
        ]
    if isinstance(step, Action):
        words = program.library.words(pathway)
        effect = action_effect(step, words, program.layout, pathway)
        return [(step.go_to, effect(bits))]
    return _by_rows(program, node, step, bits) if isinstance(step, Branch) else []


def _by_rows(program: Program, node: Node, step: Branch, bits: int) -> list[Flow]:
    flows = [(name, bits) for name in (step.otherwise, step.not_known) if name is not None]
    for row in step.rows:
        narrowed = _narrowed(program, node, row.when, bits)
        if narrowed is not None:
            flows.append((row.go_to, narrowed))
    return flows


def _narrowed(program: Program, node: Node, when: Condition, bits: int) -> int | None:
    for name, values in when.terms:
        field = program.layout.field(node.place.pathway, name)
        mask = field.mask(values)
        if not bits & mask:
            return None
        bits = bits & ~field.every | bits & mask
    return bits


def _over_there(
    program: Program,
    call: Call,
    place: Place,
    bits: int,
    frame_of: dict[str, Frame],
    flow: Flowing,
) -> None:
    flow(Place(call.pathway, program.library.pathways[call.pathway].start), bits)
    if call.back:
        frame = frame_of[call.pathway]
        touched = frame.reads | sum(frame.writes)
        step = program.library.step(place)
        for _, target in getattr(step, "on_return", ()):
            flow(Place(place.pathway, target), bits | touched)
