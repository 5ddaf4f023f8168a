"""`chamberwise brief`: a list for the day becomes what a team reads in two minutes."""

from __future__ import annotations

from argparse import Namespace, _SubParsersAction
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

from chamberwise.engine.language.texts import N_, ngettext
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.audit_told import tell_report
from chamberwise.tui.command.finding_files import UnusableError, shipped
from chamberwise.tui.command.output import product, product_json, talk
from chamberwise.tui.command.status import Status
from chamberwise.tui.command.typed import day

if TYPE_CHECKING:
    from chamberwise.engine.brief.brief import Brief
    from chamberwise.engine.brief.case import CaseList, Stock
    from chamberwise.engine.diagnostics.problem import Problem
    from chamberwise.exports.audit.report import Report
    from chamberwise.exports.brief.content import BriefContent

EXAMPLE = N_("""example:
  chamberwise brief
  chamberwise brief tuesday.csv --stock shelf.yaml --stop-word "Stop, hold"
  chamberwise brief tuesday.csv --stock shelf.yaml --out tuesday.pdf
  chamberwise brief tuesday.csv --stock shelf.yaml --stamp PA3D-FAYC-Z

A list names its cases by a label for the day (A, 1, A1), never a patient:
columns that look like identity are refused. For rehearsal and preparation,
never live care. Check by hand against the unit's own biometry and
formulary. Follow local protocol.
""")
DEMONSTRATION = "demonstration"


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser("brief", help=_("the brief before a list"), epilog=_(EXAMPLE))
    parser.add_argument(
        "list",
        nargs="?",
        type=Path,
        metavar=_("LIST"),
        help=_("CSV or YAML, one case a row; without it: the invented list that comes along"),
    )
    parser.add_argument(
        "--stock", type=Path, metavar=_("FILE"), help=_("the unit's shelf, as YAML")
    )
    parser.add_argument("--reader", metavar=_("WHO"), help=_("who reads aloud, by role"))
    parser.add_argument("--takes-over", metavar=_("WHO"), help=_("who takes over, by role"))
    parser.add_argument("--stop-word", metavar=_("WORD"), help=_("the word that stops everything"))
    parser.add_argument("--format", choices=("text", "json"), default="text")
    parser.add_argument("--out", type=Path, metavar=_("FILE.pdf"), help=_("print it on one page"))
    parser.add_argument("--paper", choices=("A4", "A3"), default="A4")
    parser.add_argument(
        "--date", type=day, metavar=_("DATE"), help=_("printed then; left out: today")
    )
    parser.add_argument(
        "--overwrite", action="store_true", help=_("also a file that is none of our sheets")
    )
    parser.add_argument("--report", action="store_true", help=_("also show the audit of the page"))
    parser.add_argument(
        "--stamp",
        metavar=_("CODE"),
        help=_("whether a printed brief is still that of list and shelf"),
    )
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Show or print the brief; findings where there is something to do before the list."""
    from chamberwise.exports.brief.extract import brief_content

    path = _path_of(arguments)
    found = worked_brief(arguments)
    content = brief_content(found)
    if arguments.stamp:
        return _compare(arguments.stamp, arguments)
    if path:
        _print(found, content, path, arguments)
    elif arguments.format == "json":
        from chamberwise.exports.brief.machine import values

        product_json(values(found, content))
    else:
        from chamberwise.exports.brief.text import text

        product(text(content))
    if content.to_do:
        count = len(content.to_do)
        told = ngettext(
            "{count} things to do before the list starts.",
            "{count} things to do before the list starts.",
            count,
        )
        talk(told.format(count=count))
    return Status.FINDINGS if content.to_do else Status.CLEAN


def worked_brief(arguments: Namespace) -> Brief:
    """Return the brief of what was typed. Raises `UnusableError` for files that cannot be used."""
    from chamberwise.engine.brief.work import brief

    if arguments.list is None:
        talk(_("No list was named: this is the invented one of the Harbour Eye Unit."))
    return brief(*_read(arguments))


def _read(arguments: Namespace) -> tuple[CaseList, Stock]:
    path, stock_path = arguments.list, arguments.stock
    if path is None:
        folder = shipped() / DEMONSTRATION
        path, stock_path = folder / "list.csv", stock_path or folder / "stock.yaml"
    return _listed(path, arguments), _stock(stock_path)


def _stamps(arguments: Namespace) -> Iterator[str]:
    """Yield the stamp of the brief in every language: what it says is told when it is worked."""
    from chamberwise.engine.brief.work import brief
    from chamberwise.engine.language.languages import LANGUAGES
    from chamberwise.engine.language.speaking import speaking
    from chamberwise.exports.brief.extract import brief_content
    from chamberwise.exports.brief.make import stamp

    for language in LANGUAGES:
        with speaking(language):
            found = brief(*_read(arguments))
            yield stamp(found, brief_content(found))


def _compare(typed: str, arguments: Namespace) -> int:
    """Say whether a printed brief is the one that would be printed now, in any language."""
    from chamberwise.engine.stamp.code import MistypedError, read_stamp

    try:
        code = read_stamp(typed)
    except MistypedError as error:
        raise UnusableError(str(error)) from error
    if code in _stamps(arguments):
        product(
            _("{code}: current. This list and this shelf give the same brief.").format(code=code)
        )
        return Status.CLEAN
    product(
        _(
            "{code}: not current. The list, the shelf or the program has changed; print it anew."
        ).format(code=code)
    )
    return Status.FINDINGS


def _path_of(arguments: Namespace) -> Path | None:
    """Return the file that is to be printed, and raise where it cannot be, before any work."""
    if not arguments.out:
        return None
    from chamberwise.exports.printing.files import NotWrittenError, destination, refuse_strangers
    from chamberwise.exports.printing.printing import Form

    try:
        path = destination(arguments.out, "brief", Form.PDF)
        if not arguments.overwrite:
            refuse_strangers(path)
    except NotWrittenError as error:
        raise UnusableError(str(error)) from error
    return path


def _print(found: Brief, content: BriefContent, path: Path, arguments: Namespace) -> None:
    from chamberwise.exports.brief.make import make
    from chamberwise.exports.paper.sizes import Paper, Sized
    from chamberwise.exports.printing.files import NotWrittenError, write
    from chamberwise.exports.printing.unfit import UnfitError
    from chamberwise.exports.typesetting.compiling import UnprintableError

    try:
        sized = Sized(Paper(arguments.paper))
        made = make(found, content, sized, arguments.date or date.today())
        write({path: made.pdf})
    except UnfitError as error:
        ways = [f"  - {each}" for each in error.ways_out]
        raise UnusableError("\n".join([error.why, _("Ways out:"), *ways])) from error
    except (NotWrittenError, UnprintableError) as error:
        raise UnusableError(str(error)) from error
    product(str(path))
    talk(_("Stamp of the brief: {code}").format(code=made.code))
    _tell(made.report, arguments.report)


def _tell(report: Report, is_wanted: bool) -> None:
    from chamberwise.exports.printing.telling_audits import told_of_draft

    for line in told_of_draft([report]):
        talk(line)
    if is_wanted:
        tell_report(report)


def listed(path: Path) -> CaseList:
    """Return the list of a file. Raises `UnusableError` with every problem of it."""
    from chamberwise.engine.brief.listing import read_list

    found = read_list(path)
    if found.listed is None:
        raise _unusable(found.problems, found.texts, _("The list cannot be used so."))
    return found.listed


def _listed(path: Path, arguments: Namespace) -> CaseList:
    found = listed(path)
    head = replace(
        found.head,
        reader=arguments.reader or found.head.reader,
        takes_over=arguments.takes_over or found.head.takes_over,
        stop_word=arguments.stop_word or found.head.stop_word,
    )
    return replace(found, head=head)


def _stock(path: Path | None) -> Stock:
    from chamberwise.engine.brief.case import Head, Stock
    from chamberwise.engine.brief.stock import read_stock

    if path is None:
        return Stock("", "", (), Head())
    found = read_stock(path)
    if found.stock is None:
        raise _unusable(found.problems, found.texts, _("The file of stock cannot be used so."))
    return found.stock


def _unusable(problems: Sequence[Problem], texts: Mapping[str, str], said: str) -> UnusableError:
    from chamberwise.engine.diagnostics.text import problem_text

    return UnusableError("\n".join([*(problem_text(each, texts) for each in problems), said]))
