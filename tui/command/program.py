"""The terminal program: at the library, or at one walk."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.store.home import walks
from chamberwise.exports.record.standing import STANDING
from chamberwise.tui.command.finding_files import UnusableError, add_local, asked, shipped
from chamberwise.tui.command.output import product, talk
from chamberwise.tui.command.status import Status
from chamberwise.tui.in_language import in_language
from chamberwise.tui.setting import Setting
from chamberwise.tui.sitting import local_time
from chamberwise.tui.terminal import carries_screen, wants_colour
from chamberwise.tui.units import DEMONSTRATION

if TYPE_CHECKING:
    from chamberwise.tui.command.walk import Started
    from chamberwise.tui.sitting import Sitting


def add_program(parser: ArgumentParser) -> None:
    """Say what may be typed where no command is."""
    add_local(parser)
    parser.add_argument(
        "--sheets",
        type=Path,
        metavar=_("DIR"),
        help=_("a folder of local sheets to choose a unit from, instead of the one here"),
    )


def run(arguments: Namespace | None = None) -> int:
    """Open the program at the library; without a screen, say what to type instead.

    Under a unit's sheet, it shows the pathways as the unit has them.
    """
    if not carries_screen():
        talk(_("The library needs a terminal of at least 60 columns and 20 rows."))
        talk(_("`chamberwise list` shows the pathways; `chamberwise walk ID --plain` walks one."))
        talk(_("`chamberwise work NAME --ask` works a calculation line by line."))
        return Status.UNUSABLE
    from chamberwise.tui.app import WalkProgram

    setting = _setting(arguments)
    status = WalkProgram(setting).run() or Status.CLEAN
    product(_(STANDING))
    return status


def _setting(arguments: Namespace | None) -> Setting:
    """Return the setting of the library, under the sheet that was named."""
    folder = arguments.sheets if arguments else None
    if folder is not None and not folder.is_dir():
        message = _("{folder} is not a folder. Name one that holds local sheets.")
        raise UnusableError(message.format(folder=folder))
    found = asked((), None, arguments.local if arguments else None)
    base = found.under.base if found.under else found.loaded
    if found.under and found.loaded.library.local is None:
        sheet = found.under.sheet.shown_as
        message = _("{file} is not carried out. `chamberwise check {file}` says why.")
        raise UnusableError(message.format(file=sheet))
    return Setting(
        in_language(found.loaded, shipped()),
        local_time,
        walks(),
        wants_colour(),
        shipped(),
        (folder or Path(), shipped() / DEMONSTRATION),
        base,
    )


def walk_on_screen(started: Started, sitting: Sitting) -> int:
    """Walk on the screen and return the exit status."""
    from chamberwise.tui.app import WalkProgram

    setting = Setting(started.loaded, local_time, walks(), wants_colour())
    record_to = str(started.arguments.record or "")
    status = WalkProgram(setting, sitting, started.remarks, record_to).run() or Status.CLEAN
    product(_farewell(started, sitting))
    return status


def _farewell(started: Started, sitting: Sitting) -> str:
    if sitting.walk.is_over:
        return "\n".join([_("The walk is over."), _(STANDING)])
    if sitting.is_kept:
        kept = _("The walk is kept. To go on with it:")
        return "\n".join([kept, started.go_on_with, _(STANDING)])
    return f"{sitting.how_left}\n{_(STANDING)}"
