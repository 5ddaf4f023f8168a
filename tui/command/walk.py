"""`chamberwise walk`: one question or action at a time, on a screen or line by line."""

from __future__ import annotations

import shlex
import sys
from argparse import Namespace, _SubParsersAction
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import (
    UnusableError,
    add_library,
    add_local,
    asked,
    refuse_place,
    shipped,
)
from chamberwise.tui.command.output import talk
from chamberwise.tui.command.status import Status

if TYPE_CHECKING:
    from chamberwise.engine.reading.library import Loaded
    from chamberwise.tui.present.figures import CaseGiven
    from chamberwise.tui.sitting import Sitting

EXAMPLE = N_("""example:
  chamberwise walk posterior-capsule-rupture
  chamberwise walk posterior-capsule-rupture --resume
  chamberwise walk my-pathway.yaml --plain --record walk.txt
  chamberwise walk my-pathway.yaml --answers answers.txt
  chamberwise walk my-pathway.yaml --brief tuesday.csv --case A
  chamberwise walk --replay 2S45-JDTN-H4D8-AH

an answers file has one answer a line: a number, an answer's name, or done;
empty lines and lines that begin with # are skipped

Rehearsal and teaching only, never live care. Follow local protocol.
""")


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser("walk", help=_("walk a pathway step by step"), epilog=_(EXAMPLE))
    parser.add_argument(
        "pathway",
        nargs="?",
        metavar=_("ID|FILE"),
        help=_("a pathway's name, or a .yaml file; may be left out with --replay"),
    )
    add_library(parser)
    add_local(parser)
    parser.add_argument("--plain", action="store_true", help=_("line by line, without a screen"))
    parser.add_argument(
        "--answers", metavar=_("FILE"), help=_("take the answers from a file; - for standard input")
    )
    parser.add_argument(
        "--resume", action="store_true", help=_("go on with the newest walk not finished")
    )
    parser.add_argument(
        "--replay",
        metavar=_("KEY"),
        help=_("go through a walk by the key that `chamberwise prove` gave for it"),
    )
    parser.add_argument(
        "--record", type=Path, metavar=_("FILE"), help=_("save the record as FILE, .txt or .json")
    )
    parser.add_argument(
        "--brief", type=Path, metavar=_("LIST"), help=_("a list whose case has its figures shown")
    )
    parser.add_argument("--case", metavar=_("LABEL"), help=_("the case of the list, by its label"))
    parser.set_defaults(run=run)


@dataclass(frozen=True, slots=True)
class Started:
    """What a walk was started with."""

    typed: str
    loaded: Loaded
    pathway: str
    remarks: tuple[str, ...]
    arguments: Namespace

    @property
    def go_on_with(self) -> str:
        """The command that goes on with this walk."""
        words = ["chamberwise", "walk", self.typed, "--resume"]
        if self.arguments.library is not None:
            words += ["--library", str(self.arguments.library)]
        if self.arguments.local is not None:
            words += ["--local", str(self.arguments.local)]
        return shlex.join(words)


def run(arguments: Namespace) -> int:
    """Walk a pathway."""
    _check_record(arguments.record)
    case = _case(arguments)
    loaded, pathway, sitting, remarks = _begun(arguments)
    sitting.case = case
    started = Started(arguments.pathway or pathway, loaded, pathway, remarks, arguments)
    try:
        return _walk(started, sitting)
    finally:
        sitting.close()


def _case(arguments: Namespace) -> CaseGiven | None:
    """Return the case of a brief that was named. Raises `UnusableError` where there is none."""
    if arguments.brief is None and arguments.case is None:
        return None
    if arguments.brief is None or arguments.case is None:
        raise UnusableError(_("`--brief LIST` and `--case LABEL` go together."))
    from chamberwise.tui.command.brief import listed
    from chamberwise.tui.present.figures import CaseGiven

    cases = listed(arguments.brief).cases
    found = next((each for each in cases if each.label == arguments.case), None)
    if found is None:
        known = ", ".join(f"`{each.label}`" for each in cases)
        raise UnusableError(
            _("The list has no case `{case}`. It has {known}.").format(
                case=arguments.case, known=known
            )
        )
    return CaseGiven(found.label, found.written)


def _begun(arguments: Namespace) -> tuple[Loaded, str, Sitting, tuple[str, ...]]:
    if arguments.replay is not None:
        from chamberwise.tui.command.walk_replay import replayed

        return (*replayed(arguments), ())
    if arguments.pathway is None:
        raise UnusableError(_("Name a pathway to walk. `chamberwise list` shows those there are."))
    from chamberwise.exports.record.translation import of_translation
    from chamberwise.tui.in_language import in_language

    source, pathway = _pathway(arguments)
    loaded = in_language(source, arguments.library or shipped())
    sitting, remarks = _sitting(arguments, loaded, pathway)
    return loaded, pathway, sitting, (*remarks, *of_translation(loaded.library, pathway))


def _check_record(path: Path | None) -> None:
    if path is None:
        return
    from chamberwise.exports.record.save import NotSavedError, renderer_for
    from chamberwise.tui.keeping import is_taken

    try:
        renderer_for(path)
    except NotSavedError as error:
        raise UnusableError(str(error)) from error
    if is_taken(path):
        raise UnusableError(
            _(
                "There is already a file {path}, and a record writes over nothing. Name another "
                "file after --record."
            ).format(path=path)
        )
    refuse_place(path)


def _pathway(arguments: Namespace) -> tuple[Loaded, str]:
    from chamberwise.tui.walkable import problems_in_the_way

    found = asked((arguments.pathway,), arguments.library, arguments.local)
    problems = problems_in_the_way(found.loaded, found.shown[0])
    if problems:
        raise UnusableError(problems)
    return found.loaded, found.pathways[0]


def _sitting(arguments: Namespace, loaded: Loaded, pathway: str) -> tuple[Sitting, tuple[str, ...]]:
    from chamberwise.engine.store.home import walks
    from chamberwise.tui.sitting import local_time, sit_down

    if arguments.resume:
        return _resumed(arguments, loaded, pathway)
    folder = None if arguments.answers is not None else walks()
    return sit_down(loaded, pathway, local_time, folder), ()


def _resumed(arguments: Namespace, loaded: Loaded, pathway: str) -> tuple[Sitting, tuple[str, ...]]:
    from chamberwise.engine.store.home import walks
    from chamberwise.engine.store.journal_file import InUseError
    from chamberwise.tui.sitting import local_time, sit_down
    from chamberwise.tui.unfinished import go_on, newest_unfinished

    found = newest_unfinished(loaded, pathway, walks())
    if found is None:
        remark = _("There is no unfinished walk of this pathway. This is a fresh one.")
        return sit_down(loaded, pathway, local_time, walks()), (remark,)
    if found.walk is None:
        raise UnusableError(_changed(arguments, found.changed, found.kept.entries))
    try:
        sitting = go_on(loaded, found, local_time)
    except InUseError as error:
        raise UnusableError(
            _("This walk is open in another terminal. Go on with it there.")
        ) from error
    remarks = (
        _("Going on with the walk begun on {day} at {time}.").format(
            day=f"{found.began:%Y-%m-%d}", time=f"{found.began:%H:%M}"
        ),
        found.torn,
    )
    return sitting, tuple(remark for remark in remarks if remark)


def _changed(arguments: Namespace, why: str, journal: Any) -> str:
    from chamberwise.exports.record.bare import bare_record
    from chamberwise.exports.record.save import NotSavedError, save_record

    fresh = _("To begin a fresh one: chamberwise walk {pathway}").format(pathway=arguments.pathway)
    if arguments.record is None:
        return "\n".join([why, _("To keep a record of it, add --record FILE."), fresh])
    try:
        save_record(bare_record(journal), arguments.record)
    except NotSavedError as error:
        return f"{why}\n{error}\n{fresh}"
    saved = _("Its record is saved as {path}.").format(path=arguments.record)
    return "\n".join([why, saved, fresh])


def _walk(started: Started, sitting: Sitting) -> int:
    from chamberwise.tui.terminal import carries_screen

    arguments = started.arguments
    if arguments.answers is None and not arguments.plain and carries_screen():
        from chamberwise.tui.command.program import walk_on_screen

        status = walk_on_screen(started, sitting)
    else:
        from chamberwise.tui.command.walk_plain import walk_plain

        status = walk_plain(started, sitting)
    return _saved(arguments.record, sitting, status)


def _saved(path: Path | None, sitting: Sitting, status: int) -> int:
    from chamberwise.exports.record.save import NotSavedError
    from chamberwise.tui.keeping import NOTHING_DONE, save_anew

    if path is None:
        return status
    sys.stdout.flush()
    if not sitting.is_begun:
        talk(_(NOTHING_DONE))
        return status
    try:
        talk(_("The record is saved as {path}.").format(path=save_anew(sitting, path)))
    except NotSavedError as error:
        talk(str(error))
        return status or Status.UNUSABLE
    return status
