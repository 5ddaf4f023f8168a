"""What stands on the case table, in words."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.language.texts import N_, ngettext

NOTHING = "–"
IMPOSSIBLE = N_("Combinations declared impossible; in the table only where it says PROBLEM")
STANDING = N_(
    "What the pathway leads to, no advice for a patient. “any”: whichever it is. Small "
    "letters: what the row hangs on, told at the end; were that otherwise, plan or "
    "outcome would be."
)


@dataclass(frozen=True, slots=True)
class Row:
    """One row: a cell for each column, and the letters of what it hangs on."""

    cells: tuple[str, ...]
    marks: tuple[str, ...]
    remark: str = ""


@dataclass(frozen=True, slots=True)
class Head:
    """Findings that lead to the rows below, and the plans that they settle by themselves.

    `marks` are the letters of what each row below hangs on under this head, beside its own.
    """

    findings: tuple[tuple[str, str], ...]
    plans: tuple[tuple[str, str], ...]
    marks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Section:
    """Rows, and each combination of the other findings for which they hold alike."""

    heads: tuple[Head, ...]
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class Impossible:
    """A combination declared impossible, why, how many cases that are, and what comes of them."""

    when: str
    because: str
    cases: int
    after: str

    @property
    def told(self) -> str:
        """Its reason, and how often it comes up."""
        number = ngettext("{number} combination", "{number} combinations", self.cases)
        return f"{self.because} {number.format(number=self.cases)}: {self.after}."


@dataclass(frozen=True, slots=True)
class CaseTablePaper:
    """The whole table. `notes` are pairs of a letter and what stands behind it."""

    title: str
    columns: tuple[str, ...]
    sections: tuple[Section, ...]
    assumed: tuple[tuple[str, str], ...]
    impossible: tuple[Impossible, ...]
    notes: tuple[tuple[str, str], ...]
    all_hang_on: tuple[str, ...]
    completeness: str
