"""`chamberwise print`: sheets for the wall, the pocket and the trolley."""

from __future__ import annotations

from argparse import Namespace, _SubParsersAction
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

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
from chamberwise.tui.command.output import product, talk
from chamberwise.tui.command.print_typed import metres, waiver
from chamberwise.tui.command.print_wanted import (
    FORMS,
    begin,
    beside_of,
    refuse_out,
    wanted_of,
)
from chamberwise.tui.command.status import Status
from chamberwise.tui.command.typed import day

if TYPE_CHECKING:
    from chamberwise.engine.reading.library import Loaded
    from chamberwise.exports.audit.report import Report
    from chamberwise.tui.printing import Done
    from chamberwise.tui.sheets_beside import SheetsBeside
    from chamberwise.tui.wanted import Wanted

WHAT = (
    "wall-chart",
    "pocket-card",
    "role-cards",
    "kit-list",
    "script",
    "case-table",
    "full",
    "pack",
)
REPORTS = ("text", "json")

EXAMPLE = N_("""example:
  chamberwise print posterior-capsule-rupture
  chamberwise print posterior-capsule-rupture --paper A1 --distance 1 --tiles
  chamberwise print posterior-capsule-rupture --what pack --out sheets/
  chamberwise print anterior-vitrectomy --what script --format text
  chamberwise print dropped-nucleus --what full --report
  chamberwise print posterior-capsule-rupture --local our-unit.yaml
  chamberwise print dropped-nucleus --waive LEG-12="Agreed by the theatre team."
""")


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser("print", help=_("sheets on paper"), epilog=_(EXAMPLE))
    parser.add_argument("name", metavar=_("ID or FILE"))
    parser.add_argument(
        "--what",
        choices=WHAT,
        default="wall-chart",
        metavar=_("KIND"),
        help=_("{kinds} or {pack} (all of them); left out: wall-chart").format(
            kinds=", ".join(WHAT[:-1]), pack=WHAT[-1]
        ),
    )
    parser.add_argument("--paper", choices=("A4", "A3", "A2", "A1"))
    turn = parser.add_mutually_exclusive_group()
    turn.add_argument("--portrait", dest="turn", action="store_const", const="portrait")
    turn.add_argument("--landscape", dest="turn", action="store_const", const="landscape")
    parser.add_argument(
        "--distance", type=metres, metavar=_("METRES"), help=_("from where it has to be read")
    )
    parser.add_argument(
        "--tiles", action="store_true", help=_("a wall chart cut into A4 sheets to be joined")
    )
    parser.add_argument("--format", choices=tuple(FORMS), help=_("left out: as --out ends, or pdf"))
    parser.add_argument(
        "--out", metavar=_("FILE or FOLDER"), help=_("left out: a file in this folder; text: shown")
    )
    parser.add_argument(
        "--overwrite", action="store_true", help=_("also a file that is none of our sheets")
    )
    parser.add_argument("--unit", metavar=_("NAME"), help=_("the unit whose sheet it is"))
    parser.add_argument(
        "--date", type=day, metavar=_("DATE"), help=_("printed then; left out: today")
    )
    parser.add_argument("--hangs", metavar=_("PLACE"), default="", help=_("where it will hang"))
    parser.add_argument(
        "--no-register", dest="registers", action="store_false", help=_("keep no line of it")
    )
    parser.add_argument("--register", dest="registers", action="store_true", default=True)
    parser.add_argument(
        "--report",
        nargs="?",
        choices=REPORTS,
        const="text",
        metavar="json",
        help=_("also show the audit of each sheet, rule by rule; as text or, if asked, as JSON"),
    )
    parser.add_argument(
        "--waive",
        action="append",
        type=waiver,
        default=[],
        metavar=_("RULE=REASON"),
        help=_("let an error of that rule through, for a reason; can be said several times"),
    )
    add_library(parser)
    add_local(parser)
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Print, register, and say where the files are."""
    refuse_out(arguments)
    hangs = _place(arguments.hangs) if arguments.hangs else ""
    with beside_of(arguments) as beside:
        found = asked((arguments.name,), arguments.library, arguments.local)
        if beside:
            begin(beside, found, arguments)
        pathway = _printable(found)
        if broken := _broken(found, pathway):
            talk(broken)
            return Status.FINDINGS
        found = replace(found, loaded=_as_shown(found, arguments))
        wanted = wanted_of(arguments, found, pathway)
        return _print(found, wanted, hangs, arguments, beside)


def _as_shown(found: Asked, arguments: Namespace) -> Loaded:
    from chamberwise.tui.in_language import in_language

    return in_language(found.loaded, arguments.library or shipped())


def _print(
    found: Asked,
    wanted: Wanted,
    hangs: str,
    arguments: Namespace,
    beside: SheetsBeside | None,
) -> Status:
    from chamberwise.tui.preparing import prepared
    from chamberwise.tui.printing import (
        StoppedOrderError,
        UnusableOrderError,
        print_sheets,
        text_of,
        write_text,
    )

    library = found.loaded.library
    try:
        if wanted.form == "text":
            text = text_of(library, wanted)
            product(text.rstrip("\n") if wanted.out is None else str(write_text(text, wanted)))
            return Status.CLEAN
        prepare = beside.prepared if beside else prepared
        done = print_sheets(library, wanted, prepare)
    except UnusableOrderError as error:
        raise UnusableError(str(error)) from error
    except StoppedOrderError as error:
        talk(str(error))
        _show((), error.reports, arguments.report)
        return Status.FINDINGS
    _show(done.files, done.reports, arguments.report)
    _tell(found, done, hangs, _source(arguments), registers=arguments.registers)
    return Status.CLEAN


def _show(files: tuple[Path, ...], reports: tuple[Report, ...], form: str | None) -> None:
    """Show where the files are and, if asked for, the reports; as JSON one object has both."""
    if form == "json":
        import json

        from chamberwise.exports.audit.values import report_values

        values = {"files": [*map(str, files)], "reports": [*map(report_values, reports)]}
        product(json.dumps(values, ensure_ascii=False, indent=2))
        return
    for path in files:
        product(str(path))
    if form:
        from chamberwise.exports.audit.text import report_text

        for each in reports:
            product("\n" + report_text(each).rstrip("\n"))


def _tell(found: Asked, done: Done, hangs: str, source: str, *, registers: bool) -> None:
    from chamberwise.engine.store.home import register_path
    from chamberwise.engine.store.register_file import RegisterError
    from chamberwise.exports.record.standing import STANDING
    from chamberwise.tui.printing import register

    for line in done.told:
        talk(line)
    for kind, order in done.orders:
        talk(_("Stamp of the {kind}: {code}").format(kind=_(kind.words), code=order.control.code))
    if registers:
        try:
            register(found.loaded.library, done, register_path(), hangs, source)
        except RegisterError as error:
            talk(_("Printed, but not registered. {error}").format(error=error))
    talk(_(STANDING))


def _source(arguments: Namespace) -> str:
    """Return the file printed from, where it was named as one: the library does not have it."""
    path = Path(arguments.local or arguments.name)
    return str(path.resolve()) if path.is_file() and path.suffix in (".yaml", ".yml") else ""


def _broken(found: Asked, pathway: str) -> str:
    from chamberwise.tui.fit_to_print import rules_in_the_way

    return rules_in_the_way(found.loaded, pathway)


def _place(typed: str) -> str:
    from chamberwise.exports.printing.registering import NoPlaceError, place

    try:
        return place(typed)
    except NoPlaceError as error:
        raise UnusableError(str(error)) from error


def _printable(found: Asked) -> str:
    from chamberwise.tui.fit_to_print import errors_in_the_way

    errors = errors_in_the_way(found.loaded, found.shown[0])
    if errors:
        raise UnusableError(errors)
    return found.pathways[0]
