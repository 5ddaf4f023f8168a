"""`chamberwise drill`: a rehearsal against the clock, in one's own words."""

from __future__ import annotations

import shlex
from argparse import Namespace, _SubParsersAction
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import (
    UnusableError,
    add_library,
    asked,
    refuse_place,
    shipped,
)
from chamberwise.tui.command.typed import whole_number

if TYPE_CHECKING:
    from chamberwise.engine.reading.drills import Drills
    from chamberwise.engine.reading.library import Loaded

EXAMPLE = N_("""example:
  chamberwise drill
  chamberwise drill posterior-capsule-rupture --mode run --seed 7
  chamberwise drill posterior-capsule-rupture --scenario which-lens
  chamberwise drill --team --roles "surgeon scrub-practitioner reader ..."
  chamberwise drill --resume
  chamberwise drill posterior-capsule-rupture --seed 7 --answers typed.txt
  chamberwise drill posterior-capsule-rupture --next --mode run
  chamberwise drill anterior-vitrectomy --plan

an answers file has what is said, a line each; @12 before it says how many
seconds after the first cue, else a line comes 4 s after the one before

Rehearses recall, sequence, the timing of decisions and team roles, never
operative skill. Never live care. Follow local protocol.
""")


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser("drill", help=_("rehearse against the clock"), epilog=_(EXAMPLE))
    parser.add_argument(
        "pathway",
        nargs="?",
        metavar=_("ID"),
        help=_("a pathway's name; left out, the seed chooses"),
    )
    add_library(parser)
    parser.add_argument("--seed", type=whole_number, metavar="N", help=_("the same drill again"))
    parser.add_argument(
        "--mode",
        choices=("rehearse", "run"),
        default="rehearse",
        help=_("a rehearsal lets you go back; only runs count"),
    )
    parser.add_argument("--scenario", metavar=_("NAME"), help=_("a scenario written by hand"))
    parser.add_argument(
        "--seconds", type=whole_number, metavar="N", help=_("how long it lasts after the first cue")
    )
    parser.add_argument("--team", action="store_true", help=_("who does what, for the whole team"))
    parser.add_argument(
        "--roles", metavar=_("NAMES"), help=_("with --team: who is in today, instead of asking")
    )
    parser.add_argument("--plain", action="store_true", help=_("line by line, without a screen"))
    parser.add_argument(
        "--answers",
        metavar=_("FILE"),
        help=_("take what is said from a file; - for standard input"),
    )
    parser.add_argument("--resume", action="store_true", help=_("go on with the newest drill left"))
    parser.add_argument(
        "--debrief", type=Path, metavar=_("FILE"), help=_("save the debrief as FILE, .pdf or .txt")
    )
    parser.add_argument(
        "--next", action="store_true", help=_("the drill that tells most of what is not known yet")
    )
    parser.add_argument(
        "--plan", action="store_true", help=_("the fewest drills found that walk every answer")
    )
    parser.set_defaults(run=run)


@dataclass(frozen=True, slots=True)
class Ready:
    """Everything a drill needs before it begins."""

    arguments: Namespace
    loaded: Loaded
    drills: Drills
    remarks: tuple[str, ...] = ()

    @property
    def go_on_with(self) -> str:
        """The command that goes on with a drill that was left."""
        words = ["chamberwise", "drill", "--resume"]
        if self.arguments.library is not None:
            words += ["--library", str(self.arguments.library)]
        return shlex.join(words)


def run(arguments: Namespace) -> int:
    """Drill."""
    from chamberwise.engine.store.home import runs_path
    from chamberwise.tui.command.drill_begin import begun, resumed
    from chamberwise.tui.command.drill_plain import drill_plain, is_by_hand
    from chamberwise.tui.debriefing import Debriefing
    from chamberwise.tui.drill_remarks import drill_remarks
    from chamberwise.tui.line.drill_script import HandSetClock
    from chamberwise.tui.sitting import local_time
    from chamberwise.tui.terminal import carries_screen

    ready = _ready(arguments)
    if arguments.plan:
        return _plan(ready)
    if arguments.next:
        arguments.seed = _next_seed(ready)
    by_hand = is_by_hand(arguments)
    clock = HandSetClock() if not by_hand else None
    fresh = () if arguments.resume else (begun(ready, clock), ())
    rehearsal, remarks = fresh or resumed(ready, clock)
    pathway = rehearsal.drill.scenario.pathway
    remarks = (*remarks, *drill_remarks(ready.loaded.library, ready.drills, pathway))
    store = runs_path() if rehearsal.path is not None else None
    rehearsal.debriefing = Debriefing(local_time, store, arguments.debrief)
    try:
        if by_hand and not arguments.plain and carries_screen():
            from chamberwise.tui.command.drill_screen import drill_on_screen

            return drill_on_screen(ready, rehearsal, remarks)
        return drill_plain(ready, rehearsal, clock, remarks)
    finally:
        rehearsal.close()


def _plan(ready: Ready) -> int:
    from chamberwise.tui.command.drill_plan import show_plan

    pathway = ready.arguments.pathway
    if pathway is None:
        raise UnusableError(_("A plan is of one pathway. Name it: chamberwise drill ID --plan."))
    if pathway not in ready.loaded.library.pathways:
        advice = did_you_mean(pathway, ready.loaded.library.pathways, _("`list` shows them."))
        raise UnusableError(
            _("There is no pathway `{pathway}`. {advice}").format(pathway=pathway, advice=advice)
        )
    return show_plan(ready.loaded, pathway)


def _next_seed(ready: Ready) -> int:
    from chamberwise.tui.command.drill_plan import next_seed

    arguments = ready.arguments
    if arguments.seed is not None or arguments.scenario is not None or arguments.resume:
        raise UnusableError(
            _("--next chooses the drill itself: leave --seed, --scenario, --resume.")
        )
    if arguments.pathway not in ready.drills.books:
        known = ", ".join(ready.drills.books)
        raise UnusableError(
            _("Name a pathway with --next. There are drills of {known}.").format(known=known)
        )
    return next_seed(ready.loaded, ready.drills.books[arguments.pathway])


def _ready(arguments: Namespace) -> Ready:
    from chamberwise.engine.diagnostics.text import problem_text
    from chamberwise.engine.reading.drills import read_drills
    from chamberwise.tui.in_language import drills_in_language, in_language

    _refuse_page(arguments.debrief)
    folder: Path = arguments.library or shipped()
    loaded = in_language(asked((), arguments.library).loaded, folder)
    drills = read_drills(folder)
    if drills.problems:
        told = "\n\n".join(problem_text(each, drills.texts) for each in drills.problems)
        raise UnusableError("\n\n".join([told, _("No drill begins until this is put right.")]))
    if not drills.books:
        raise UnusableError(_("There are no drills in {folder}.").format(folder=folder / "drills"))
    return Ready(arguments, loaded, drills_in_language(drills, folder))


def _refuse_page(page: Path | None) -> None:
    """Raise where the debrief cannot be saved under that name, before a drill is begun for it."""
    from chamberwise.tui.debriefing import is_page

    if page is None:
        return
    if not is_page(page):
        raise UnusableError(
            _("{path} ends in neither .pdf nor .txt. Name the debrief so.").format(path=page)
        )
    if page.exists() or page.is_symlink():
        raise UnusableError(
            _("There is already a file {path}. Name another one after --debrief.").format(path=page)
        )
    refuse_place(page)
