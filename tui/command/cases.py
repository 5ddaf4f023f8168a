"""`chamberwise cases`: every combination of the assessment findings, and where it leads."""

from __future__ import annotations

from argparse import Namespace, _SubParsersAction
from datetime import date
from typing import Any

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import (
    Asked,
    UnusableError,
    add_library,
    add_local,
    asked,
    shipped,
)
from chamberwise.tui.command.output import product, product_json, talk
from chamberwise.tui.command.status import Status

EXAMPLE = N_("""example:
  chamberwise cases posterior-capsule-rupture
  chamberwise cases posterior-capsule-rupture --assume stage=cortex --format csv
  chamberwise cases posterior-capsule-rupture --every-walk --format json
""")


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser("cases", help=_("every case and its plan"), epilog=_(EXAMPLE))
    parser.add_argument("name", metavar=_("ID or FILE"))
    add_library(parser)
    add_local(parser)
    parser.add_argument("--format", choices=("text", "csv", "json"), default="text")
    parser.add_argument(
        "--assume",
        action="append",
        default=[],
        metavar=_("FINDING=VALUE"),
        help=_("the first answer to a finding, instead of the table's own"),
    )
    parser.add_argument(
        "--cannot-tell", action="store_true", help=_("let each finding be unclear too")
    )
    parser.add_argument(
        "--every-walk",
        action="store_true",
        help=_("with --format json: also every outcome that these first answers may end in"),
    )
    parser.add_argument(
        "--all", action="store_true", help=_("one row a case, equal rows kept apart")
    )
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Show the table; findings when a case is open."""
    from chamberwise.engine.cases.grouping import apart, grouped
    from chamberwise.engine.cases.summary import summary
    from chamberwise.engine.cases.table import whole_cases
    from chamberwise.exports.cases.content import case_sheet
    from chamberwise.exports.cases.told import completeness
    from chamberwise.exports.record.translation import of_translation
    from chamberwise.tui.in_language import in_language

    if arguments.every_walk and arguments.format != "json":
        raise UnusableError(_("`--every-walk` needs `--format json`."))
    found = asked((arguments.name,), arguments.library, arguments.local)
    name = _walkable(found)
    library = in_language(found.loaded, arguments.library or shipped()).library
    table = library.pathways[name].cases
    if table is None:
        raise UnusableError(
            _("`{name}` has no table of cases. Add `cases:` to its file.").format(name=name)
        )
    assumed = {**dict(table.assume), **_assumed(arguments.assume, found, name)}
    rows = whole_cases(library, name, assumed, cannot_tell=arguments.cannot_tell)
    whole = arguments.all or arguments.format != "text"
    groups = apart(rows) if whole else grouped(rows)
    said = completeness(summary(rows))
    ends = _ends(library, name, rows) if arguments.every_walk else None
    sheet = case_sheet(library, name, groups, assumed, completeness=said, ends=ends)
    _show(sheet, arguments.format)
    if arguments.format == "text":
        told = _("{combinations} combinations, {rows} rows.")
        if not whole:
            told = _(
                "{combinations} combinations, {rows} rows. What leads alike stands in one row."
            )
        talk(told.format(combinations=len(rows), rows=len(groups)))
    else:
        talk(said)
    for remark in of_translation(library, name):
        talk(remark)
    return Status.FINDINGS if any(case.problem for case in rows) else Status.CLEAN


def _ends(library: Any, name: str, rows: Any) -> Any:
    from chamberwise.engine.cases.endings import may_end_in

    combinations = [case.combination for case in rows]
    return dict(zip(combinations, may_end_in(library, name, combinations), strict=True))


def _show(sheet: Any, form: str) -> None:
    if form == "json":
        from chamberwise.exports.cases.machine import values

        product_json(values(sheet))
    elif form == "csv":
        from chamberwise.exports.cases.csv import csv_text

        product(csv_text(sheet))
    else:
        from chamberwise.exports.cases.text import text

        product(text(sheet))


def _walkable(found: Asked) -> str:
    from chamberwise.engine.checks.run import check_for_walk
    from chamberwise.engine.diagnostics.text import problem_text

    if not found.pathways:
        raise UnusableError(_("There is no pathway in this file. `chamberwise check` says why."))
    name = found.pathways[0]
    problems = check_for_walk(found.loaded, name, date.today())
    if problems:
        for problem in problems:
            talk(problem_text(problem, found.loaded.texts))
        raise UnusableError(
            _("`{name}` cannot be walked until this is put right.").format(name=name)
        )
    return name


def _assumed(typed: list[str], found: Asked, pathway: str) -> dict[str, str]:
    assumed = {}
    for each in typed:
        finding, equals, value = each.partition("=")
        known = found.loaded.library.words(pathway).findings.get(finding)
        if not equals or known is None or known.value(value) is None:
            raise UnusableError(
                _("`--assume {assumed}` names no finding and value of `{pathway}`.").format(
                    assumed=each, pathway=pathway
                )
            )
        assumed[finding] = value
    return assumed
