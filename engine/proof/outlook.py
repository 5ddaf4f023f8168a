"""What one search goes by: the machines that watch, a view, and what may be forgotten in it."""

from __future__ import annotations

from collections.abc import Sequence, Set
from dataclasses import dataclass

from chamberwise.engine.exploration.liveness import live
from chamberwise.engine.proof.between import Between
from chamberwise.engine.proof.ground import Ground
from chamberwise.engine.proof.monitors import Monitor
from chamberwise.engine.proof.shots import NO_SHOT, ShotAt, Shots
from chamberwise.engine.proof.view import View


@dataclass(frozen=True, slots=True)
class Outlook:
    """All by node. `kept` are the bits that may still be read, and those set for what is not."""

    ground: Ground
    watching: Sequence[Monitor]
    view: View
    shots: Shots
    shot_at: Sequence[ShotAt]
    kept: Sequence[tuple[int, int]]
    beyond: frozenset[int]
    """The nodes after which nothing is shown that anybody asks for."""


def outlook(
    ground: Ground,
    watching: Sequence[Monitor],
    view: View,
    *,
    reduced: bool,
    towards: Set[int] = frozenset(),
) -> Outlook:
    """Return the outlook of some machines in a view that shows all they speak of.

    Where rules only forbid, a walk that can never again show what they speak of is settled:
    nothing beyond has to be looked at, nor remembered for it. Likewise where it is asked only what
    is true at some nodes, those `towards` which walks go.
    """
    shots = Shots(watching, ground.program, ground.entry)
    return _looking(ground, shots, shots.everywhere(ground.scenes), view, reduced, towards)


def outlook_after(before: Outlook, ground: Ground, apart: Between, *, reduced: bool) -> Outlook:
    """Return the same outlook after an edit: what moves do is worked out where they changed."""
    shots = before.shots.upon(ground.program)
    changed = {spot % ground.spots.size for spot in apart.changed}
    was = {at: each for at, each in apart.nodes.items() if at not in changed}
    shot_at = [
        before.shot_at[was[at]] if at in was else shots.at(node)
        for at, node in enumerate(ground.program.nodes)
    ]
    return _looking(ground, shots, shot_at, before.view, reduced, frozenset())


def _looking(
    ground: Ground,
    shots: Shots,
    shot_at: Sequence[ShotAt],
    view: View,
    reduced: bool,
    towards: Set[int],
) -> Outlook:
    program, watching = ground.program, shots.monitors
    beyond = frozenset[int]()
    if towards:
        beyond = _beyond(ground, towards)
    elif reduced and watching and all(monitor.only_forbids for monitor in watching):
        beyond = _beyond(ground, {at for at, shot in enumerate(shot_at) if shot != NO_SHOT})
    alive = [view] * len(program.nodes)
    if reduced:
        reads = shots.reads(shot_at)
        seen = [0 if at in beyond else bits & view for at, bits in enumerate(reads)]
        alive = live(program, seen)
    findings = program.layout.every
    kept = [(bits, findings & ~bits) for bits in alive]
    return Outlook(ground, watching, view, shots, shot_at, kept, beyond)


def _beyond(ground: Ground, speaking: Set[int]) -> frozenset[int]:
    """Return the nodes from which no arrows lead to one of some nodes."""
    size = ground.spots.size
    waiting = [spot for spot in ground.before if spot % size in speaking]
    leading = set(waiting)
    while waiting:
        for spot in ground.before[waiting.pop()]:
            if spot not in leading:
                leading.add(spot)
                waiting.append(spot)
    return frozenset(range(size)).difference(spot % size for spot in leading)
