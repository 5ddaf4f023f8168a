"""`chamberwise compare`: what changed in meaning between two versions, and what that touches."""

from __future__ import annotations

from argparse import Namespace, _SubParsersAction
from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.audit_told import tell_audit, tell_report
from chamberwise.tui.command.finding_files import UnusableError, add_library, refuse_place, shipped
from chamberwise.tui.command.not_compared import not_compared, told
from chamberwise.tui.command.output import product, product_json, talk
from chamberwise.tui.command.status import Status
from chamberwise.tui.command.typed import add_on
from chamberwise.tui.command.versions import Side, beside_each_other, called_otherwise, side

if TYPE_CHECKING:
    from chamberwise.engine.model.drill import DrillBook
    from chamberwise.engine.reading.library import File
    from chamberwise.exports.audit.report import Report
    from chamberwise.exports.comparing.content import ComparisonShown
    from chamberwise.exports.control.content import Control

EXAMPLE = N_("""example:
  chamberwise compare anterior-vitrectomy my-vitrectomy.yaml
  chamberwise compare HEAD~1:my-pathway.yaml my-pathway.yaml
  chamberwise compare HEAD~1:my-pathway.yaml my-pathway.yaml --log
  chamberwise compare anterior-vitrectomy my-vitrectomy.yaml --paper paper.pdf
  chamberwise compare posterior-capsule-rupture our-unit.yaml
  chamberwise compare our-unit-1.yaml our-unit-2.yaml --paper paper.pdf
  chamberwise compare old-library/ new-library/ --format json

exit status: 0 the same in meaning, 1 different, 2 cannot be compared
""")


_ALONE = {
    "is gone": N_("{name}: the pathway is gone."),
    "is new": N_("{name}: the pathway is new."),
}


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser(
        "compare", help=_("what changed in meaning, and what it touches"), epilog=_(EXAMPLE)
    )
    what = _("a pathway's ID, a file, a local sheet, a folder, or REVISION:PATH in a git checkout")
    parser.add_argument("old", metavar=_("OLD"), help=what)
    parser.add_argument("new", metavar=_("NEW"), help=_("likewise"))
    parser.add_argument("--format", choices=("text", "json"), default="text")
    parser.add_argument(
        "--log",
        action="store_true",
        help=_("as an entry of a change log, dated by the new version"),
    )
    parser.add_argument(
        "--paper",
        type=Path,
        metavar="PDF",
        help=_("a paper for the meeting that approves, as well"),
    )
    parser.add_argument(
        "--sheets",
        type=Path,
        metavar=_("DIR"),
        help=_("a folder of local sheets to look through for old names, instead of the one here"),
    )
    parser.add_argument("--report", action="store_true", help=_("also show the audit of the page"))
    add_on(parser)
    add_library(parser)
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Compare and tell, the gravest changes first."""
    from chamberwise.engine.reading.drills import read_drills
    from chamberwise.exports.comparing.log import entry
    from chamberwise.exports.comparing.machine import comparison_values
    from chamberwise.exports.comparing.text import comparison_text, what_it_means

    old, new = side(arguments.old, arguments.library), side(arguments.new, arguments.library)
    pairs = beside_each_other(old, new)
    today = arguments.on or date.today()
    if arguments.paper is not None:
        _refuse_paper(arguments.paper, len(pairs))
    books = read_drills(_library_of(new, arguments.library)).books
    sheets = _sheets(arguments.sheets)
    shown = [_compared(old, new, pair, today, books, sheets) for pair in pairs]
    alone, unrated = _alone(old, new), not_compared(old, new)
    is_same = not alone and not unrated and not any(each.changes for each in shown)
    if arguments.log:
        product("\n\n".join(entry(each) for each in shown if each.changes))
    elif arguments.format == "json":
        values = {"same": is_same, "pathways": alone, "not rated": unrated}
        product_json({**comparison_values(shown), **values})
    else:
        for each in shown:
            product(comparison_text(each) + "\n")
        for name, what in alone.items():
            product(_(_ALONE[what]).format(name=name) + "\n")
        for line in told(unrated):
            product(line + "\n")
        product(what_it_means())
    if arguments.paper is not None:
        _on_paper(shown[0], new, arguments, today)
    return Status.CLEAN if is_same else Status.FINDINGS


def _library_of(side: Side, library: Path | None) -> Path:
    """Return the folder beside whose pathways the drills lie."""
    return Path(side.typed) if side.is_library else library or shipped()


def _sheets(folder: Path | None) -> tuple[File, ...]:
    """Return the local sheets of a folder, or of the one that is stood in."""
    from chamberwise.engine.local.finding import sheets_in

    if folder is not None and not folder.is_dir():
        raise UnusableError(
            _("{folder} is not a folder. Name one that holds local sheets.").format(folder=folder)
        )
    return sheets_in([folder or Path()])


def _compared(
    old: Side,
    new: Side,
    pair: tuple[str, str],
    today: date,
    books: Mapping[str, DrillBook],
    sheets: tuple[File, ...],
) -> ComparisonShown:
    from chamberwise.engine.comparing.compare import Version, compare
    from chamberwise.engine.store.home import register_path
    from chamberwise.engine.store.register_file import RegisterError, read
    from chamberwise.exports.comparing.extract import comparison_shown

    talk(
        _("Comparing `{pathway}`: both versions are walked and proved where they differ.").format(
            pathway=pair[1]
        )
    )
    try:
        register = read(register_path())
    except RegisterError as error:
        raise UnusableError(str(error)) from error
    versions = Version(old.loaded, pair[0]), Version(new.loaded, pair[1])
    return comparison_shown(compare(*versions, register, today, sheets), today, books)


def _alone(old: Side, new: Side) -> dict[str, str]:
    """Return the pathways that one library has and the other has not."""
    if not (old.is_library and new.is_library):
        return {}
    renamed = called_otherwise(old, new)
    kept = {*old.pathways, *renamed.values()}
    gone = {each: "is gone" for each in old.pathways if each not in {*new.pathways, *renamed}}
    return gone | {name: "is new" for name in new.pathways if name not in kept}


def _refuse_paper(path: Path, pathways: int) -> None:
    """Raise where no paper can be made, before the long work."""
    if pathways != 1:
        raise UnusableError(_("A paper is of one pathway. Compare one file or ID with another."))
    if path.suffix.lower() != ".pdf":
        raise UnusableError(_("{path} does not end in .pdf. Name it so.").format(path=path))
    if path.exists() or path.is_symlink():
        raise UnusableError(
            _("{path} is there already. Choose another name, or move it away.").format(path=path)
        )
    refuse_place(path)


def _on_paper(shown: ComparisonShown, new: Side, arguments: Namespace, today: date) -> None:
    from chamberwise.engine.language.languages import ENGLISH
    from chamberwise.engine.stamp.code import stamp_of
    from chamberwise.engine.stamp.content import content_digest
    from chamberwise.engine.store.whole_file import write_bytes_whole
    from chamberwise.exports.comparing.document import document
    from chamberwise.exports.control.extract import control_of
    from chamberwise.exports.printing.kind import Kind
    from chamberwise.exports.printing.sheet_name import sheet_name
    from chamberwise.exports.printing.unfit import UnfitError
    from chamberwise.exports.typesetting.compiling import UnprintableError

    path, library = arguments.paper, new.loaded.library
    code = stamp_of(content_digest(library, shown.pathway), sheet_name(Kind.FULL, ENGLISH.code))
    local = library.local_to(shown.pathway)
    control = control_of(
        library.pathways[shown.pathway],
        _("what changes"),
        today,
        code,
        unit=local.unit if local else None,
        library=library,
    )
    try:
        made = document(shown, control)
        _refuse_errors(made.report, control, arguments)
        write_bytes_whole(path, made.pdf)
    except (UnfitError, UnprintableError) as error:
        raise UnusableError(_("The paper cannot be made: {error}").format(error=error)) from error
    except OSError as error:
        raise UnusableError(
            _("{path} cannot be written: {reason}.").format(path=path, reason=error.strerror)
        ) from error
    talk(
        _("The paper is {path}. It carries the stamp of the new full pathway: {code}").format(
            path=path, code=code
        )
    )
    tell_audit(made.report, is_wanted=arguments.report, is_aside=_is_read_by_programs(arguments))


def _is_read_by_programs(arguments: Namespace) -> bool:
    return bool(arguments.log) or arguments.format == "json"


def _refuse_errors(report: Report, control: Control, arguments: Namespace) -> None:
    """Raise where the paper of an approved pathway has errors: somebody stands for it."""
    from chamberwise.exports.printing.telling_audits import told

    if control.is_approved and report.errors:
        if arguments.report:
            tell_report(report, is_aside=_is_read_by_programs(arguments))
        raise UnusableError("\n".join(told(report)))
