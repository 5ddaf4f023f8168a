"""How complete a table of cases is, in numbers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from chamberwise.engine.cases.case import Case
from chamberwise.engine.cases.hang import Granted


@dataclass(frozen=True, slots=True)
class Summary:
    """Counts of cases. All but those that are open lead to one plan and one outcome."""

    cases: int
    open: int
    on_a_choice: int
    """Those whose plan or outcome hangs on a choice the unit has not made."""
    looked_at_again: int
    """Those declared impossible that lead to a second look in time, and are not open."""
    never_told: int
    """Those declared impossible whose answers never come together, and that are not open."""


def summary(found: Sequence[Case]) -> Summary:
    """Return the counts of some cases."""
    settled = [case for case in found if not case.problem]
    impossible = [case for case in settled if case.improbable]
    looked = [case for case in impossible if case.looked_again]
    return Summary(
        len(found),
        len(found) - len(settled),
        sum(any(hang.taken.kind is Granted.CHOICE for hang in case.hangs_on) for case in found),
        len(looked),
        len(impossible) - len(looked),
    )
