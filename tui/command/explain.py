"""`chamberwise explain`: what a diagnostic means, with a wrong and a right example."""

from __future__ import annotations

from argparse import Namespace, _SubParsersAction
from typing import Any

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import UnusableError
from chamberwise.tui.command.output import product, product_json, table
from chamberwise.tui.command.status import Status

EXAMPLE = N_("""example:
  chamberwise explain leads-nowhere
  chamberwise explain                every diagnostic by its code
""")


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser("explain", help=_("what a diagnostic means"), epilog=_(EXAMPLE))
    parser.add_argument(
        "code",
        nargs="?",
        metavar=_("CODE"),
        help=_("as it stands in a report; left out: all of them"),
    )
    parser.add_argument("--format", choices=("text", "json"), default="text")
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Explain one diagnostic, or list them all."""
    from dataclasses import asdict

    from chamberwise.engine.diagnostics.nearest import did_you_mean
    from chamberwise.exports.explaining.extract import explanations
    from chamberwise.exports.explaining.text import HEADS, explained_text, rows

    known = explanations()
    by_any_case = {code.lower(): each for code, each in known.items()}
    wanted = list(known.values())
    if arguments.code is not None:
        found = by_any_case.get(arguments.code.strip("[]`").lower())
        if found is None:
            advice = did_you_mean(arguments.code, known, _("`chamberwise explain` lists them."))
            raise UnusableError(
                _("There is no diagnostic `{code}`. {advice}").format(
                    code=arguments.code, advice=advice
                )
            )
        wanted = [found]
    if arguments.format == "json":
        product_json([asdict(each) for each in wanted])
    elif arguments.code is not None:
        product(explained_text(wanted[0]))
    else:
        product(table(rows(wanted), tuple(_(head) for head in HEADS)))
    return Status.CLEAN
