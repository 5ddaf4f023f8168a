"""Proving rules: against networkx and SPIN on the same pathways, from cold, and at a large size.

Processor time throughout, the best of several runs; where memory is told, in a process of its own.
"""

from __future__ import annotations

import json
import subprocess
import sys
import time
from collections.abc import Callable, Sequence

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.verdict import Holds

from tests.bench.measure import Row, seconds
from tests.bench.proof_networkx import prove_straight
from tests.bench.proof_rules import eight_rules, sixty_four_rules
from tests.bench.proof_spin import is_there, prove_with_spin
from tests.bench.proof_synthetic import NAME, synthetic

RUN = [sys.executable, "-m", "chamberwise.tui.command.main"]
YAML = (
    "import pathlib, yaml;"
    "texts = [each.read_text('utf-8') for each in pathlib.Path('protocols').rglob('*.yaml')];"
    "[yaml.safe_load(text) for text in texts]"
)
ENOUGH = 0.5
"""Seconds of measuring after which no further run is made."""

MOST = 4_000_000
LARGE = {300_000: (1_300, 8), 3_000_000: (13_000, 8)}
"""By about how many states: steps, and how many findings of nine a phase keeps in mind."""


def rows() -> list[Row]:
    """Return all rows; those of SPIN only where it is installed."""
    found = [*_whole_library(), *_straight(), *_by_size(), *_by_rules(), *_large(), *_reduced()]
    if not is_there():
        print("SPIN or gcc is not installed: its rows are left out", file=sys.stderr)
        return found
    return [*found, *_spin()]


def _whole_library() -> list[Row]:
    took = seconds([*RUN, "prove"], 2)
    version = seconds([*RUN, "--version"], 2)
    loaded = seconds([sys.executable, "-c", YAML], 1)
    what, told = "prove, whole library from cold", f"{took:.2f} s"
    aim = "under 1 s"
    return [
        Row(what, told, f"--version {version:.2f} s", took / version, aim),
        Row(what, told, f"yaml.safe_load {loaded:.2f} s", took / loaded, ""),
    ]


def _straight() -> list[Row]:
    """Compare with the product in networkx."""
    found = []
    for steps in (1_000, 10_000):
        library, rules = synthetic(steps), eight_rules()
        took, states = _proved(library, rules)
        seen, pairs, holds = prove_straight(library, rules)
        straight = _best(lambda: prove_straight(library, rules))  # noqa: B023
        assert seen <= states  # ours looks at a few twice
        assert all(holds)
        what = f"{steps:,} steps, networkx over ours"
        reference = f"networkx {straight:.2f} s, {pairs:,} pairs"
        found.append(Row(what, _told(took, states), reference, straight / took, "20 or more"))
    return found


def _by_size() -> list[Row]:
    """Compare with counting as many numbers into a dictionary: what no search does without."""
    found = []
    for steps, aim in ((1_000, "under 10 ms"), (10_000, ""), (100_000, "3 us or less a state")):
        took, states = _proved(synthetic(steps), eight_rules())
        filled = _best(lambda: dict.fromkeys(range(1 << 40, (1 << 40) + states)))  # noqa: B023
        what = f"{steps:,} steps, 8 rules"
        reference = f"as many dictionary keys {filled * 1000:.1f} ms"
        found.append(Row(what, _told(took, states), reference, took / filled, aim))
    return found


def _by_rules() -> list[Row]:
    library = synthetic(10_000)
    few, _ = _proved(library, eight_rules())
    many, states = _proved(library, sixty_four_rules())
    reference = f"8 rules {few * 1000:.0f} ms"
    what = "10,000 steps, 64 rules"
    return [Row(what, _told(many, states), reference, many / few, "1.5 times or less")]


def _large() -> list[Row]:
    """Compare the bytes a state at two sizes."""
    sizes = {about: _alone(*how) for about, how in LARGE.items()}
    (_, _, few), (took, states, memory) = sizes.values()
    smaller = next(iter(sizes.values()))[1]
    reference = f"{few / smaller:.0f} bytes a state at {smaller:,}"
    measured = f"{memory / states:.0f} bytes a state, {memory / 1e6:.0f} MB, {_told(took, states)}"
    ratio = (memory / states) / (few / smaller)
    return [Row("many states: memory", measured, reference, ratio, "1 GB or less")]


def _reduced() -> list[Row]:
    library, rules = synthetic(1_000), eight_rules()
    took, states = _proved(library, rules)
    whole, more = _proved(library, rules, reduced=False)
    what = "1,000 steps, nothing forgotten"
    return [Row(what, _told(whole, more), f"reduced {_told(took, states)}", whole / took, "")]


def _spin() -> list[Row]:
    """Compare end to end, and with the search of SPIN alone."""
    found = []
    for steps, aim in ((1_000, 20), (10_000, 10), (100_000, 4)):
        library, rules = synthetic(steps), eight_rules()
        took, states = _proved(library, rules)
        spin = prove_with_spin(library, rules, states)
        assert spin.holds
        what = f"{steps:,} steps, SPIN over ours"
        reference = f"SPIN {spin.in_all:.2f} s, {spin.states:,} states"
        ratio = spin.in_all / took
        told = _told(took, states)
        found.append(Row(f"{what}, end to end", told, reference, ratio, f"{aim} or more"))
        search = f"SPIN {spin.search:.3f} s"
        found.append(Row(f"{what}, search alone", told, search, spin.search / took, "0.5 or more"))
    return found


def _proved(library: Library, rules: Sequence[Rule], *, reduced: bool = True) -> tuple[float, int]:
    """Return the seconds of a proof, and the states it looked at; every rule has to hold."""
    proof = prove(library, NAME, rules, reduced=reduced, most=MOST)
    assert all(isinstance(each, Holds) and not each.is_vacuous for each in proof.verdicts)
    took = _best(lambda: prove(library, NAME, rules, reduced=reduced, most=MOST))
    return took, proof.states


def _best(work: Callable[[], object]) -> float:
    best, spent = float("inf"), 0.0
    while spent < ENOUGH:
        start = time.process_time()
        work()
        took = time.process_time() - start
        best, spent = min(best, took), spent + took
    return best


def _told(took: float, states: int) -> str:
    return f"{took * 1000:.1f} ms, {states:,} states, {took / states * 1e6:.1f} us each"


def _alone(steps: int, kept: int) -> tuple[float, int, int]:
    """Return the seconds, the states and the bytes of a proof in a process of its own."""
    command = [sys.executable, "-m", "tests.bench.proof_alone", str(steps), str(kept)]
    # A process counts as its own peak what its parent holds when it starts: hence a small parent.
    small = "import subprocess, sys; sys.exit(subprocess.run(sys.argv[1:]).returncode)"
    done = subprocess.run(
        [sys.executable, "-c", small, *command],
        capture_output=True,
        text=True,
        check=True,
    )
    took, states, memory = json.loads(done.stdout)
    return took, states, memory
