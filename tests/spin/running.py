"""Running SPIN: one verifier is built for all rules of one size, then run once for each rule."""

from __future__ import annotations

import os
import shutil
import subprocess
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

import pytest
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Rule

from tests.engine.patterns.every import Kind
from tests.spin.formulas import kind_of, ltl, name_of
from tests.spin.writing import Table

HERE = Path(__file__).parent
REQUIRED = os.environ.get("CHAMBERWISE_SPIN") == "required"
DEEPEST = 20_000
EVERY_WALK_ENDS = "every_walk_ends"


class SpinError(RuntimeError):
    """SPIN, the compiler or the verifier failed, or the search was cut short."""


def have_spin() -> None:
    """Skip the test where SPIN or a C compiler is missing; fail it where they are required."""
    missing = [name for name in ("spin", "gcc") if shutil.which(name) is None]
    if not missing:
        return
    if REQUIRED:
        pytest.fail(f"not found: {', '.join(missing)}, and CHAMBERWISE_SPIN=required")
    pytest.skip(f"not found: {', '.join(missing)}; every rule is proved without it all the same")


@dataclass(frozen=True)
class Size:
    """How much a verifier has room for."""

    findings: int
    bounds: int
    depth: int

    @property
    def options(self) -> list[str]:
        return [f"-DFINDINGS={self.findings}", f"-DBOUNDS={self.bounds}", f"-DDEPTH={self.depth}"]


def size_of(table: Table) -> Size:
    """Return what one table needs."""
    return Size(len(table.finding), max(len(table.bound), 1), table.depth)


@dataclass(frozen=True)
class Answer:
    """What SPIN says of one rule, and how many states of the product it stored."""

    holds: bool
    states: int


@dataclass(frozen=True)
class Verifier:
    """A verifier that stands built in a folder."""

    folder: Path

    def judge(
        self, library: Library, entry: str, rule: Rule, *, claim: str = "", hash_bits: int = 16
    ) -> Answer:
        """Return what SPIN says of a rule on all walks of a pathway. Raises `SpinError`."""
        numbers = Table(library, entry, rule).numbers()
        table = self.folder / "walk.table"
        table.write_text("\n".join(map(str, numbers)), encoding="ascii")
        claim = claim or name_of(kind_of(rule))
        command = ["./pan", "-a", "-E", f"-m{DEEPEST}", f"-w{hash_bits}", "-N", claim]
        said = _run(command, self.folder, {"WALK": str(table)})
        if "max search depth too small" in said or "errors:" not in said:
            raise SpinError(said)
        stored = next(line for line in said.splitlines() if "states, stored" in line)
        return Answer("errors: 0" in said, int(stored.split()[0]))


def build(folder: Path, size: Size, kinds: Iterable[Kind], *, optimise: str = "-O0") -> Verifier:
    """Build a verifier of some kinds of rules in an empty folder. Raises `SpinError`."""
    blocks = [f"ltl {name_of(kind)} {{ {ltl(kind)} }}\n" for kind in sorted(set(kinds))]
    model = (HERE / "walk.pml").read_text(encoding="utf-8") + "".join(blocks)
    (folder / "model.pml").write_text(model, encoding="utf-8")
    shutil.copy(HERE / "walk.h", folder)
    _run(["spin", *size.options, "-a", "model.pml"], folder)
    _run(["gcc", optimise, "-w", *size.options, "-DNOREDUCE", "-o", "pan", "pan.c"], folder)
    if not (folder / "pan").exists():
        raise SpinError("no verifier was built")
    return Verifier(folder)


def _run(command: list[str], folder: Path, more: dict[str, str] | None = None) -> str:
    """Return what a program printed; it is ended if it takes too long."""
    try:
        made = subprocess.run(
            command,
            cwd=folder,
            env={**os.environ, **(more or {})},
            capture_output=True,
            text=True,
            timeout=600,
            check=False,
        )
    except subprocess.TimeoutExpired as error:
        raise SpinError(f"{command[0]} took too long") from error
    return made.stdout + made.stderr
