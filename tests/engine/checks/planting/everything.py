"""Every planted fault of a library, and whether a damaged library is told as it must be."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from chamberwise.engine.checks.run import check_files
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.reading.library import File, Loaded, assemble, load_library, read_text

from tests.engine.checks.planting import arrows, evidence, form, rules, wording, words
from tests.engine.checks.planting.editing import Fault, Source

TODAY = date(2026, 11, 25)
Planter = Callable[[Source], Iterator[Fault]]
PLANTERS: tuple[Planter, ...] = (
    form.faults,
    arrows.faults,
    words.faults,
    evidence.faults,
    rules.faults,
    wording.faults,
)
QUICK: tuple[Planter, ...] = (form.faults, words.faults, evidence.faults, rules.faults)


@dataclass(frozen=True, slots=True)
class Planted:
    """One fault in one file of a library."""

    loaded: Loaded
    file: str
    fault: Fault

    def problems(self) -> list[Problem]:
        """Check the damaged file in its otherwise good library."""
        return check_files(assemble(self._files()), [self.file], TODAY)

    def _files(self) -> Iterator[File]:
        for name, file in self.loaded.files.items():
            yield read_text(self.fault.text, name) if name == self.file else file

    def missed(self) -> str:
        """Return nothing where the fault is told as it must be, else what was told instead."""
        fault, problems = self.fault, self.problems()
        for each in problems:
            here = each.span is not None and each.span.line == fault.line
            said = fault.saying in each.message + each.advice
            if each.code == fault.slug and each.file == self.file and here and said:
                return ""
        told = [f"{p.span.line if p.span else 0}: {p.message} [{p.code}]" for p in problems[:5]]
        wanted = f"{self.file}:{fault.line}: {fault.kind}: [{fault.slug}] {fault.saying}"
        return "\n    ".join([wanted, *(told or ["nothing was told"])])


def library(folder: Path) -> Loaded:
    """Return a library read once."""
    return load_library(folder)


def planted(loaded: Loaded, planters: tuple[Planter, ...] = PLANTERS) -> Iterator[Planted]:
    """Yield every fault at every place of every file."""
    for file in loaded.files:
        source = Source(loaded, file)
        for planter in planters:
            for fault in planter(source):
                yield Planted(loaded, file, fault)
