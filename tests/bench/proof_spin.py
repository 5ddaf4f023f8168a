"""SPIN with the encoding that suits it best: C tables, all machines in one search for assertions.

SPIN is given the steps as masks over bits, reduced as the proof reduces them, with no bound
counted, and the machines of the rules. End to end, as for the proof, is from the model objects to
the verdict, in processor time: writing the tables, making the verifier (`spin -a`), compiling it,
without or with optimising, whichever is less in all, and the search (`pan`), for which the table
of states is made as large as it has to be.
"""

from __future__ import annotations

import os
import re
import resource
import shutil
import struct
import subprocess
import tempfile
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.exploration.liveness import live
from chamberwise.engine.exploration.program import Node, Program
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.step import Branch, Outcome
from chamberwise.engine.proof.monitors import Monitor, monitors
from chamberwise.engine.proof.shots import ShotAt, Shots
from chamberwise.engine.proof.showing import scenes

from tests.bench.proof_synthetic import NAME

HERE = Path(__file__).parent
MOVES, DECIDES, ENDS = range(3)
STATES = 16
FAST = ["-O2", "-DSAFETY", "-DNOREDUCE", "-DNOFAIR", "-DNOBOUNDCHECK", "-DMEMLIM=8000"]
DEEPEST = 100_000


@dataclass(frozen=True, slots=True)
class Spin:
    """What SPIN took, in seconds of processor time, and what it found."""

    in_all: float
    search: float
    states: int
    holds: bool


def is_there() -> bool:
    """Whether SPIN and a compiler are installed."""
    return all(shutil.which(name) for name in ("spin", "gcc"))


def prove_with_spin(library: Library, rules: Sequence[Rule], states: int) -> Spin:
    """Prove some rules of the synthetic pathway, which has about so many states.

    Raises `RuntimeError` where SPIN gives up.
    """
    with tempfile.TemporaryDirectory() as folder:
        for name in ("proof_spin.pml", "proof_spin.h"):
            shutil.copy(HERE / name, folder)
        start = time.process_time()
        Path(folder, "walk.table").write_bytes(_table(library, rules))
        written = time.process_time() - start
        search = ["./pan", f"-m{DEEPEST}", f"-w{(2 * states).bit_length()}"]
        made, _ = _timed(["spin", "-a", "proof_spin.pml"], folder, "pan.c")
        plain = _built_and_run(["-O0", *FAST[1:]], search, folder)
        fast = _built_and_run(FAST, search, folder)
    least = min(sum(plain[:2]), sum(fast[:2]))
    return Spin(written + made + least, fast[1], _stored(fast[2]), "errors: 0" in fast[2])


def _built_and_run(
    options: Sequence[str], search: Sequence[str], folder: str
) -> tuple[float, float, str]:
    built, _ = _timed(["gcc", *options, "-w", "-o", "pan", "pan.c"], folder)
    took, told = _timed(search, folder)
    if "max search depth too small" in told or "errors:" not in told:
        raise RuntimeError(told)
    return built, took, told


def _timed(command: Sequence[str], folder: str, made: str = "pan") -> tuple[float, str]:
    """Return the time of a command that has to leave a file of some name, and what it told.

    SPIN warns of every expression in C and tells so by its status, which says nothing then.
    """
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    done = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    if made not in os.listdir(folder):
        raise RuntimeError(done.stdout + done.stderr)
    took = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return took, done.stdout


def _stored(told: str) -> int:
    found = re.search(r"(\S+) states, stored", told)
    assert found
    return int(float(found[1]))


def _table(library: Library, rules: Sequence[Rule]) -> bytes:
    program = compiled(library, NAME, by_doors=True)
    watching = [each for each in monitors(rules) if not each.is_trigger]
    shots = Shots(watching, program, NAME)
    shot_at = shots.everywhere(scenes(program))
    for node, bits in zip(program.nodes, live(program, shots.reads(shot_at)), strict=True):
        node.live = bits
    numbers = _numbers(program, shots, shot_at, watching)
    return struct.pack(f"{len(numbers)}i", *numbers)


def _numbers(
    program: Program, shots: Shots, shot_at: Sequence[ShotAt], watching: Sequence[Monitor]
) -> list[int]:
    """Return all tables in the order in which `proof_spin.h` reads them."""
    nodes: list[int] = []
    moves: list[int] = []
    kinds: list[int] = []
    for node, shot in zip(program.nodes, shot_at, strict=True):
        onward = [number for move in _moves(program, node) for number in move]
        reads = 0 if isinstance(shot, int) else shot.reads
        shift = (reads & -reads).bit_length() - 1 if reads else 0
        nodes += [_kind(node), len(moves) // 4, len(onward) // 4, reads, shift, len(kinds)]
        moves += onward
        for value in range((reads >> shift) + 1):
            kinds.append(shot if isinstance(shot, int) else shot(value << shift))
    remembering = [number for number, each in enumerate(watching) if not each.is_instant]
    after = [
        state
        for changes in shots.changes
        for number in remembering
        for state in _row(dict(changes).get(number, tuple(range(STATES))))
    ]
    breaks = [int(bool(loses)) for loses in shots.loses]
    machines = [watching[number].machine for number in remembering]
    lost = [-1 if each.lost is None else each.lost for each in machines]
    good = [int(state in each.good) for each in machines for state in range(STATES)]
    bits = program.first_bits
    sizes = [len(program.nodes), len(moves) // 4, len(kinds), len(breaks), len(machines), bits]
    return [*sizes, *nodes, *moves, *kinds, *breaks, *after, *lost, *good]


def _kind(node: Node) -> int:
    if isinstance(node.step, Outcome):
        return ENDS
    return DECIDES if isinstance(node.step, Branch) else MOVES


def _row(after: Sequence[int]) -> list[int]:
    return [*after, *range(len(after), STATES)]


def _moves(program: Program, node: Node) -> Iterator[tuple[int, int, int, int]]:
    """Yield every move of a node, or every row of a branch, as masks, and the node led to."""
    every = findings = program.layout.every
    for needs, keep, add, there in _ways(program, node):
        for behind in _behind(program, there):
            live = program.nodes[behind].live
            yield needs, keep & live & every, add & live | findings & ~live, behind


def _ways(program: Program, node: Node) -> Iterator[tuple[int, int, int, int]]:
    step = node.step
    if not isinstance(step, Branch):
        yield from ((needs, keep, add, enter.last) for _, needs, keep, add, enter in node.ways)
        return
    rest = step.otherwise
    assert rest is not None
    assert rest == step.not_known
    for row in step.rows:
        gone = 0
        for name, values in row.when.terms:
            field = program.layout.field(NAME, name)
            gone |= field.every & ~field.mask(values)
        yield gone, -1, 0, program.entering[NAME, row.go_to].last
    yield 0, -1, 0, program.entering[NAME, rest].last


def _behind(program: Program, place: int) -> Iterator[int]:
    if program.nodes[place].is_door:
        for there in program.nodes[place].leads_to:
            yield from _behind(program, there)
    else:
        yield place
