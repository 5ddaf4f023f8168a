"""`chamberwise steps`: the steps of a pathway as a spreadsheet, to be read back by `new --from`."""

from __future__ import annotations

from argparse import Namespace, _SubParsersAction
from pathlib import Path
from typing import Any

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import UnusableError, add_library, asked, refuse_place
from chamberwise.tui.command.output import product, talk
from chamberwise.tui.command.status import Status

EXAMPLE = N_("""example:
  chamberwise steps anterior-vitrectomy --out vitrectomy.csv
  chamberwise new wound-burn
  chamberwise steps wound-burn.yaml --out steps.csv
  chamberwise new my-wound-burn --from steps.csv

A row is a step, an answer, or one more line of the step above. What such a
sheet cannot hold is told on standard error. A sheet that leaves out a branch
becomes a pathway once the rows that lead to it lead to another step.
""")


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser(
        "steps", help=_("the steps of a pathway as a spreadsheet"), epilog=_(EXAMPLE)
    )
    parser.add_argument("name", metavar=_("ID or FILE"))
    parser.add_argument("--out", type=Path, metavar="CSV", help=_("left out: standard output"))
    add_library(parser)
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Write the sheet, and say what it leaves out."""
    from chamberwise.engine.spreadsheet.cells import written
    from chamberwise.engine.store.whole_file import write_whole
    from chamberwise.exports.steps.rows import lost, rows_of

    found = asked([arguments.name], arguments.library)
    if not found.pathways:
        raise UnusableError(
            _("{name} holds no pathway that can be read.").format(name=arguments.name)
        )
    pathway = found.loaded.library.pathways[found.pathways[0]]
    text = written(rows_of(pathway))
    if arguments.out is None:
        product(text.replace("\r\n", "\n").rstrip("\n"))
    else:
        if arguments.out.exists() or arguments.out.is_symlink():
            raise UnusableError(
                _("{path} is there already. Choose another name.").format(path=arguments.out)
            )
        refuse_place(arguments.out)
        try:
            write_whole(arguments.out, "\ufeff" + text)
        except OSError as error:
            raise UnusableError(
                _("{path} cannot be written: {reason}.").format(
                    path=arguments.out, reason=error.strerror
                )
            ) from error
        product(str(arguments.out))
    left_out = list(lost(pathway))
    if left_out:
        talk(_("The sheet does not hold:"))
        for each in left_out:
            talk(f"  - {each}")
    return Status.CLEAN
