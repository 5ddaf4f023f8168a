"""From the steps of a pathway to nodes over integers: every kind of step as masks over bits.

What many steps share, as where an arrow leads or what some acts do, is worked out once.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from chamberwise.engine.exploration.moves import Effect, Terms, action_effect, condition_masks
from chamberwise.engine.exploration.program import DONE, Call, Door, Entering, Next, Node, Program
from chamberwise.engine.exploration.unswept import unswept
from chamberwise.engine.meaning.layout import Field, layout_of
from chamberwise.engine.meaning.state import start
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import (
    CANNOT_TELL,
    Action,
    Branch,
    Handover,
    Outcome,
    PathwayId,
    Question,
    StepId,
)
from chamberwise.engine.model.words import ValueId


def compiled(
    library: Library,
    pathway: PathwayId,
    tracked: Iterable[Field] = (),
    *,
    by_doors: bool = False,
    counted: frozenset[Place] = frozenset(),
) -> Program:
    """Return the program of a pathway whose names are all defined.

    Of the tracked fields it keeps whether they are stale, as bits above those of all findings.
    With doors, whoever goes through it decides which bounds are counted, but for those `counted`
    in any case.
    """
    layout = layout_of(library)
    width = layout.every.bit_length()
    program = Program(library, layout, width=width, by_doors=by_doors, counted=counted)
    for each in tracked:
        program.tracked[each.every] = 1 << program.width
        program.width += 1
    _lay_counts(program)
    first = start(library, pathway)
    program.first_bits = first.possible
    program.node(first.place)
    with unswept():
        for place, node in enumerate(program.nodes):  # grows while it is gone through
            _compile(program, place, node)
    return program


def _lay_counts(program: Program) -> None:
    """Lay out all counts, in whatever order the arrows come to their steps."""
    for name, pathway in program.library.pathways.items():
        for step in pathway.steps.values():
            if step.bound:
                program.count(Place(name, step.id), step.bound)


def _compile(program: Program, place: int, node: Node) -> None:
    if node.is_door:
        _door(program, node)
        return
    match node.step:
        case Question():
            _question(program, node, node.step)
        case Action():
            _action(program, node, node.step)
        case Branch():
            _branch(program, node, node.step)
        case Handover():
            program.calls[place] = _handover(program, node, node.step)
        case Outcome():
            pass


def _door(program: Program, node: Node) -> None:
    bound = node.step.bound
    assert bound
    inside = program.node(node.place)
    node.leads_to.append(inside)
    past = _to(program, node, bound.after_that)
    counter = None if _exits_go_round(program, node.place) else program.counters[node.place]
    node.reads |= counter.mask if counter else 0
    node.door = Door(inside, past.last, counter)
    node.onward = lambda bits: [(None, inside, bits), (None, past.last, bits)]


def _exits_go_round(program: Program, place: Place) -> bool:
    """Whether the exits of bounds lead from a step to bounded steps again, without an end."""
    met: set[Place] = set()
    while place not in met:
        bound = program.library.step(place).bound
        if bound is None:
            return False
        met.add(place)
        place = Place(place.pathway, bound.after_that)
    return True


def _question(program: Program, node: Node, step: Question) -> None:
    asked = program.layout.field(node.place.pathway, step.ask)
    every = node.reads = asked.every
    kept = ~every & ~program.tracked.get(every, 0)
    answers = [
        (answer.id, _mask(program, asked, answer.means), _to(program, node, answer.go_to))
        for answer in step.answers
    ]
    node.asked = every
    node.ways = tuple(
        [
            (name, 0, -1, 0, enter) if name == CANNOT_TELL else (name, mask, kept | mask, 0, enter)
            for name, mask, enter in answers
        ]
    )

    def onward(bits: int) -> list[Next]:
        possible = bits & every
        if possible != every:
            for name, mask, enter in answers:
                if name != CANNOT_TELL and not possible & ~mask:
                    return [(None, *enter(bits))]
        rest = bits & kept
        return [
            (name, *enter(bits if name == CANNOT_TELL else rest | possible & mask))
            for name, mask, enter in answers
            if name == CANNOT_TELL or possible & mask
        ]

    def onward_uncounted(bits: int) -> list[Next]:
        possible = bits & every
        if possible != every:
            for name, mask, enter in answers:
                if name != CANNOT_TELL and not possible & ~mask:
                    return [(None, enter.last, bits)]
        rest = bits & kept
        return [
            (name, enter.last, bits if name == CANNOT_TELL else rest | possible & mask)
            for name, mask, enter in answers
            if name == CANNOT_TELL or possible & mask
        ]

    counts = any(enter.chain for _, _, enter in answers)
    node.onward = onward if counts else onward_uncounted


def _action(program: Program, node: Node, step: Action) -> None:
    effect = _effect(program, node.place.pathway, step)
    keep, add = effect.keep, effect.add
    node.kills = ~keep | add
    for every, _ in effect.if_narrowed:
        node.reads |= every
    enter = _to(program, node, step.go_to)
    last = enter.last
    node.ways = () if effect.if_narrowed else ((DONE, 0, keep, add, enter),)
    if effect.if_narrowed:
        node.narrowing = effect, enter
        node.onward = lambda bits: [(DONE, *enter(effect(bits)))]
    elif enter.chain:
        node.onward = lambda bits: [(DONE, *enter(bits & keep | add))]
    else:
        node.onward = lambda bits: [(DONE, last, bits & keep | add)]


def _branch(program: Program, node: Node, step: Branch) -> None:
    rows = node.rows = tuple(
        [
            (
                *condition_masks(row.when, program.layout, node.place.pathway),
                _to(program, node, row.go_to),
            )
            for row in step.rows
        ]
    )
    for _, terms, _ in rows:
        for every, _ in terms:
            node.reads |= every
    otherwise = _to(program, node, step.otherwise) if step.otherwise is not None else None
    not_known = _to(program, node, step.not_known) if step.not_known is not None else None
    node.otherwise, node.not_known = otherwise, not_known

    def onward(bits: int) -> list[Next]:
        for forbidden, _, enter in rows:
            if not bits & forbidden:
                return [(None, *enter(bits))]
        rest = not_known if _is_open(bits, rows) else otherwise
        return [(None, *rest(bits))] if rest else []

    node.onward = onward


def _is_open(bits: int, rows: Sequence[tuple[int, Terms, Entering]]) -> bool:
    """Whether some row of a branch may still turn out to be true."""
    for _, terms, _ in rows:
        for _, mask in terms:
            if not bits & mask:
                break
        else:
            return True
    return False


def _handover(program: Program, node: Node, step: Handover) -> Call:
    there = Place(step.to, program.library.pathways[step.to].start)
    enter = program.enter(there)
    back = {outcome: _to(program, node, target) for outcome, target in step.on_return}
    return Call(step.to, enter, back)


def _to(program: Program, node: Node, target: StepId) -> Entering:
    key = node.place.pathway, target
    enter = program.entering.get(key)
    if enter is None:
        enter = program.entering[key] = program.enter(Place(*key))
    node.reads |= enter.reads
    for there in enter.leads_to:
        if there not in node.leads_to:
            node.leads_to.append(there)
    return enter


def _mask(program: Program, asked: Field, means: tuple[ValueId, ...]) -> int:
    key = asked.every, means
    mask = program.masks.get(key)
    if mask is None:
        mask = program.masks[key] = asked.mask(means)
    return mask


def _effect(program: Program, pathway: PathwayId, step: Action) -> Effect:
    key = pathway, tuple([line.act for line in step.lines]), step.effects
    effect = program.effects.get(key)
    if effect is None:
        words = program.library.words(pathway)
        effect = action_effect(step, words, program.layout, pathway, program.tracked)
        program.effects[key] = effect
    return effect
