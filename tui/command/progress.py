"""`chamberwise progress`: what was rehearsed, what is due, how it went."""

from __future__ import annotations

from argparse import Namespace, _SubParsersAction
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.audit_told import tell_audit
from chamberwise.tui.command.finding_files import UnusableError, add_library, asked
from chamberwise.tui.command.output import product, product_json, talk
from chamberwise.tui.command.status import Status

if TYPE_CHECKING:
    from chamberwise.engine.model.library import Library
    from chamberwise.engine.store.runs import Runs
    from chamberwise.exports.progress.content import ProgressContent

EXAMPLE = N_("""example:
  chamberwise progress
  chamberwise progress posterior-capsule-rupture --format csv > runs.csv
  chamberwise progress posterior-capsule-rupture --print record.pdf
  chamberwise progress --not-understood

Runs are kept on this machine alone, without names, in the folder that
CHAMBERWISE_HOME names. What is due is advice and never a verdict.
""")
NONE_YET = N_("No drill is kept yet. `chamberwise drill` begins one.")


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser(
        "progress", help=_("what was rehearsed, what is due, how it went"), epilog=_(EXAMPLE)
    )
    parser.add_argument(
        "pathway", nargs="?", metavar=_("ID"), help=_("one pathway; else all drilled")
    )
    add_library(parser)
    parser.add_argument("--format", choices=("text", "json", "csv"), default="text")
    parser.add_argument(
        "--print",
        type=Path,
        metavar=_("FILE.pdf"),
        dest="to_print",
        help=_("print a record of one page, for an annual review; needs ID"),
    )
    parser.add_argument("--report", action="store_true", help=_("also show the audit of the page"))
    parser.add_argument(
        "--not-understood",
        action="store_true",
        help=_("the words typed in drills that no act was found for, instead"),
    )
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Show what is known of the runs that are kept."""
    from chamberwise.engine.store.home import runs_path
    from chamberwise.engine.store.runs import Runs
    from chamberwise.engine.store.runs_file import RunsError

    path = runs_path()
    if not path.exists():
        talk(_(NONE_YET))
        return Status.CLEAN
    try:
        runs = Runs(path, to_read=True)
        try:
            return _show(runs, arguments)
        finally:
            runs.close()
    except RunsError as error:
        raise UnusableError(error.args[0]) from error


def _show(runs: Runs, arguments: Namespace) -> int:
    if arguments.not_understood:
        return _not_understood(runs, arguments)
    kept = runs.pathways()
    pathways = [arguments.pathway] if arguments.pathway else list(kept)
    if arguments.pathway and arguments.pathway not in kept:
        library = asked((), arguments.library).loaded.library
        if arguments.pathway not in library.pathways:
            raise UnusableError(
                _("There is no pathway `{pathway}`, and no drill of one.").format(
                    pathway=arguments.pathway
                )
            )
    if not kept:
        talk(_(NONE_YET))
    if arguments.to_print:
        return _print(runs, arguments)
    if arguments.format == "csv":
        return _csv(runs, pathways)
    if arguments.format == "json":
        return _json(runs, pathways)
    library = asked((), arguments.library).loaded.library
    for pathway in pathways:
        product(_text(runs, library, pathway))
    return Status.CLEAN


def _content(runs: Runs, library: Library, pathway: str, now: datetime) -> ProgressContent:
    from chamberwise.engine.store.runs_progress import progress_of
    from chamberwise.exports.progress.content import SIGNS
    from chamberwise.exports.progress.extract import progress_content

    found = progress_of(runs, pathway, now)
    return progress_content(library, found, [sign for sign, _words in SIGNS])


def _text(runs: Runs, library: Library, pathway: str) -> str:
    from chamberwise.exports.progress.text import progress_text

    return progress_text(_content(runs, library, pathway, _now()))


def _now() -> datetime:
    return datetime.now(UTC)


def _print(runs: Runs, arguments: Namespace) -> int:
    from chamberwise.exports.printing.files import NotWrittenError, destination, write
    from chamberwise.exports.printing.printing import Form
    from chamberwise.exports.printing.unfit import UnfitError
    from chamberwise.exports.progress.sheet import record_paper
    from chamberwise.exports.typesetting.compiling import UnprintableError

    if not arguments.pathway:
        raise UnusableError(
            _("A record is of one pathway. Name it: chamberwise progress ID --print.")
        )
    library, now = asked((), arguments.library).loaded.library, _now()
    try:
        path = destination(arguments.to_print, f"{arguments.pathway}-record", Form.PDF)
        if path.exists():
            raise UnusableError(_("{path} is there already. Name another file.").format(path=path))
        content = _content(runs, library, arguments.pathway, now)
        made = record_paper(content, now.date())
        write({path: made.pdf})
    except (NotWrittenError, UnprintableError) as error:
        raise UnusableError(error.args[0]) from error
    except UnfitError as error:
        raise UnusableError(
            _("The record does not fit on one page. {reason}").format(reason=error.args[0])
        ) from error
    talk(_("{path} is written.").format(path=path))
    tell_audit(made.report, is_wanted=arguments.report)
    return Status.CLEAN


def _csv(runs: Runs, pathways: list[str]) -> int:
    from chamberwise.exports.progress.values import as_csv

    every = (run for pathway in pathways for run in runs.every(pathway))
    product(as_csv(every).replace("\r\n", "\n").rstrip("\n"))
    return Status.CLEAN


def _json(runs: Runs, pathways: list[str]) -> int:
    from chamberwise.exports.progress.values import as_value

    product_json([as_value(run) for pathway in pathways for run in runs.every(pathway)])
    return Status.CLEAN


def _not_understood(runs: Runs, arguments: Namespace) -> int:
    from chamberwise.tui.command.output import table

    found = runs.not_understood()
    if arguments.format == "json":
        product_json([{"words": words, "times": times} for words, times in found])
    else:
        product(table([(words, str(times)) for words, times in found], (_("words"), _("times"))))
    return Status.CLEAN
