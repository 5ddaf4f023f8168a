"""A drill to begin with, or the newest one left to go on with."""

from __future__ import annotations

import random
from typing import TYPE_CHECKING

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.drill.entries import Began, Mode
from chamberwise.engine.drill.fold import DrillJournalError, unfold
from chamberwise.engine.drill.generate import DRAWN, NoScenarioError
from chamberwise.engine.drill.scenario import Scenario
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading.drills import drill_digest
from chamberwise.engine.store.drill_file import KeptDrill, kept_drills
from chamberwise.engine.store.home import drills as drills_folder
from chamberwise.engine.store.journal_file import InUseError
from chamberwise.tui.command.drill_team import who_is_in
from chamberwise.tui.command.finding_files import UnusableError
from chamberwise.tui.line.drill_script import HandSetClock
from chamberwise.tui.rehearsal import Rehearsal
from chamberwise.tui.rehearsing import (
    ALONE,
    SEEDS,
    lasting,
    rehearse,
    scenario_of,
    stopwatch,
)
from chamberwise.tui.sitting import local_time

if TYPE_CHECKING:
    from chamberwise.tui.command.drill import Ready


def begun(ready: Ready, clock: HandSetClock | None) -> Rehearsal:
    """Return a fresh drill. Raises `UnusableError` for a name that is nothing."""
    arguments = ready.arguments
    seed = random.randrange(SEEDS) if arguments.seed is None else arguments.seed
    scenario = _scenario(ready, _pathway(ready, seed), seed, arguments.scenario)
    roles = ALONE
    if arguments.team:
        duties = tuple(scenario.library.shared.duties.values())
        roles, _owned = who_is_in(scenario.book, duties, arguments.roles)
    return rehearse(
        ready.loaded,
        ready.drills,
        lasting(scenario, arguments.seconds),
        Mode(arguments.mode),
        local_time(),
        clock or stopwatch(),
        drills_folder() if clock is None else None,
        roles,
        waits=clock is None,
    )


def resumed(ready: Ready, clock: HandSetClock | None) -> tuple[Rehearsal, tuple[str, ...]]:
    """Return the newest drill that was left, marked as interrupted, and what to say of it."""
    found = _newest_left(ready)
    if found is None:
        remark = _("There is no drill to go on with. This is a fresh one.")
        return begun(ready, clock), (remark,)
    first = found.entries[0]
    assert isinstance(first, Began)
    now = drill_digest(ready.loaded, ready.drills, first.pathway)
    if first.pathway not in ready.drills.books or now != first.digest:
        raise UnusableError(
            _(
                "The drill begun on {day} at {time} cannot go on: since then its files have "
                "changed. Begin a fresh one."
            ).format(day=f"{first.on:%Y-%m-%d}", time=f"{first.on:%H:%M}")
        )
    scenario = _scenario(ready, first.pathway, first.seed, first.scenario)
    try:
        drill = unfold(scenario, found.entries)
    except DrillJournalError as error:
        raise UnusableError(f"{found.path}: {error.args[0]}.") from error
    last = drill.journal[-1].at
    rehearsal = Rehearsal(
        drill,
        clock or stopwatch(),
        found.path,
        len(drill.journal),
        is_waiting=clock is None,
        begins=last if clock is None else 0,
    )
    if clock is not None:
        clock.set(last)
    try:
        rehearsal.hold()
    except InUseError as error:
        raise UnusableError(_("This drill is open in another terminal.")) from error
    rehearsal.open(resumed_on=local_time())
    remarks = [
        _("Going on with the drill of {day} at {time}. It no longer counts.").format(
            day=f"{first.on:%Y-%m-%d}", time=f"{first.on:%H:%M}"
        )
    ]
    if found.torn:
        remarks.append(_("The last entry was only half written; it is left out."))
    return rehearsal, tuple(remarks)


def _pathway(ready: Ready, seed: int) -> str:
    named, books = ready.arguments.pathway, ready.drills.books
    if named is None:
        scenario = ready.arguments.scenario
        holding = [
            name
            for name, book in books.items()
            if scenario in (None, DRAWN) or any(each.id == scenario for each in book.scenarios)
        ]
        return random.Random(seed).choice(sorted(holding or books))
    if named not in books:
        advice = did_you_mean(
            named, books, _("There are drills of {known}.").format(known=", ".join(books))
        )
        raise UnusableError(
            _("There are no drills of `{named}`. {advice}").format(named=named, advice=advice)
        )
    return str(named)


def _scenario(ready: Ready, pathway: str, seed: int, name: str | None) -> Scenario:
    if pathway not in ready.loaded.library.pathways:
        raise UnusableError(
            _("There is no pathway `{pathway}` for these drills.").format(pathway=pathway)
        )
    try:
        return scenario_of(ready.loaded, ready.drills, pathway, seed, name)
    except NoScenarioError as error:
        raise UnusableError(str(error)) from error


def _newest_left(ready: Ready) -> KeptDrill | None:
    try:
        return next(
            (
                each
                for each in kept_drills(drills_folder(), ready.arguments.pathway)
                if not each.is_over
            ),
            None,
        )
    except OSError:
        return None
