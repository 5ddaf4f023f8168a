"""Trying the scenarios of a book: everything right, and every wrong act at the beginning."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.drill.doing import did
from chamberwise.engine.drill.entries import Did
from chamberwise.engine.drill.following import is_at_the_end
from chamberwise.engine.drill.generate import NoScenarioError, generate
from chamberwise.engine.drill.playing import ANYBODY, begun, played
from chamberwise.engine.drill.scenario import Scenario
from chamberwise.engine.drill.standing import has_been
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.drill import DrillBook
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.words import ActId
from chamberwise.engine.reading.drills import Drills

SEEDS = range(8)


def unended(library: Library, drills: Drills, book: DrillBook) -> Iterator[tuple[Pointer, str]]:
    """Yield the scenarios that played rightly do not end, or end in harm, each with why."""
    named: list[tuple[Pointer, str | None]] = [(("openings",), None)]
    named += [(("scenarios", each.id), each.id) for each in book.scenarios]
    for pointer, name in named:
        for seed in SEEDS:
            try:
                scenario = generate(library, book, drills.truth, drills.phrases, seed, name)
            except NoScenarioError as error:
                yield pointer, str(error)
                break
            if why := _why_not(scenario):
                yield pointer, _("{why} (seed {seed})").format(why=why, seed=seed)
                break


def _why_not(scenario: Scenario) -> str:
    last = first = begun(scenario)
    if scenario.begins_at and not has_been(scenario, first, (scenario.begins_at,)):
        return _("done rightly, it never comes to `{step}`").format(step=scenario.begins_at)
    for last in played(scenario, first):
        if last.consequences:
            return _("done rightly, `{act}` is punished").format(act=last.consequences[-1].act)
        if has_been(scenario, last, scenario.ends_at) or is_at_the_end(scenario, last):
            return ""
    return _("done rightly, it stays at `{step}`").format(step=last.state.place.step)


def harmless(library: Library, drills: Drills, book: DrillBook) -> Iterator[ActId]:
    """Yield the wrong acts that in some scenario lead to nothing."""
    for act in drills.truth.harms:
        for seed in SEEDS:
            scenario = generate(library, book, drills.truth, drills.phrases, seed)
            after = did(scenario, begun(scenario), Did(0, act, ANYBODY), 0)
            if not any(each.act == act for each in after.consequences) or not after.cues:
                yield act
                break
