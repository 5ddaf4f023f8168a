"""`chamberwise write`: stay beside an editor and show how a file stands at every save."""

from __future__ import annotations

from argparse import Namespace, _SubParsersAction
from typing import Any

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import UnusableError, add_library, asked
from chamberwise.tui.command.output import product
from chamberwise.tui.command.status import Status

EXAMPLE = N_("""example:
  chamberwise write my-pathway.yaml      and edit the file in another window

Without a screen: chamberwise check my-pathway.yaml --watch
""")


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser(
        "write", help=_("beside your editor, how a file stands at every save"), epilog=_(EXAMPLE)
    )
    parser.add_argument("name", metavar=_("ID or FILE"))
    add_library(parser)
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Open the screen at the file; nothing is ever written to it."""
    from chamberwise.engine.store.home import walks
    from chamberwise.exports.record.standing import STANDING
    from chamberwise.tui.drafting import draft_of, draft_of_sheet
    from chamberwise.tui.setting import Setting
    from chamberwise.tui.sitting import local_time
    from chamberwise.tui.terminal import carries_screen, wants_colour

    found = asked([arguments.name], arguments.library)
    if not carries_screen():
        raise UnusableError(
            _(
                "This needs a terminal of at least 60 columns and 20 rows. `chamberwise check "
                "{name} --watch` tells the problems line by line."
            ).format(name=arguments.name)
        )
    from chamberwise.tui.app import WalkProgram

    setting = Setting(found.loaded, local_time, walks(), wants_colour())
    draft = draft_of(found.loaded, found.shown[0])
    if found.under is not None:
        draft = draft_of_sheet(found.loaded, found.under.base, found.under.sheet)
    status = WalkProgram(setting, draft=draft).run() or Status.CLEAN
    product(_(STANDING))
    return status
