"""Whether a set of states that is said to be covered holds all that a fresh sweep meets."""

from __future__ import annotations

from chamberwise.engine.proof.covered import Covered
from chamberwise.engine.proof.outlook import outlook
from chamberwise.engine.proof.sweep import Sweep

MOST = 50_000


def covers_what_a_sweep_meets(each: Covered) -> None:
    by = each.outlook
    anew = outlook(by.ground, by.watching, by.view, reduced=True)
    assert (anew.kept, anew.beyond) == (by.kept, by.beyond)
    sweep = Sweep(anew, MOST, keeps=True)
    found = sweep.run()
    assert not found.broken & each.holding
    watched = sum(by.watching[number].bits for number in each.holding)
    for spot, front in sweep.met.items():
        for bits, number in front.items():
            brought = each.carried.brings(each.fronts[spot][bits])
            assert sweep.carried.brings(number) & watched & ~brought == 0
