"""`chamberwise new`: a pathway to start from, one that already checks, proves and prints."""

from __future__ import annotations

import sys
from argparse import Namespace, _SubParsersAction
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import UnusableError, add_library, asked, shipped
from chamberwise.tui.command.output import product, talk
from chamberwise.tui.command.status import Status

if TYPE_CHECKING:
    from chamberwise.engine.model.library import Library
    from chamberwise.exports.scaffold.render import Beginning

EXAMPLE = N_("""example:
  chamberwise new wound-burn
  chamberwise new wound-burn --title "Wound burn" --author "Theatre lead"
  chamberwise new wound-burn --from steps.csv
  chamberwise new our-unit --over posterior-capsule-rupture --unit "Our unit"

At a terminal it asks for what no option gives. Enter alone takes what stands
in brackets.
""")
CLOSING = "closing-and-after-care"
NEEDED_TO_CLOSE = ("surgery-not-begun", "in-the-eye", "out-of-the-eye")


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser("new", help=_("a pathway to start from"), epilog=_(EXAMPLE))
    parser.add_argument("name", metavar=_("ID"), help=_("small letters, figures and hyphens"))
    parser.add_argument(
        "--title", metavar=_("TITLE"), help=_("what it is called; left out, made from the ID")
    )
    parser.add_argument(
        "--summary",
        metavar=_("SUMMARY"),
        help=_("for whom and when it is used, in a sentence or two"),
    )
    parser.add_argument(
        "--author", metavar=_("AUTHOR"), help=_("the role that writes it, never a person's name")
    )
    parser.add_argument(
        "--from",
        dest="sheet",
        type=Path,
        metavar="CSV",
        help=_("a sheet of steps, as `chamberwise steps` writes one"),
    )
    parser.add_argument(
        "--over", metavar=_("PATHWAY"), help=_("a unit's local sheet over that pathway instead")
    )
    parser.add_argument("--unit", metavar=_("NAME"), help=_("with --over: whose sheet it is"))
    parser.add_argument(
        "--out", type=Path, metavar=_("DIR"), default=Path(), help=_("where to write it")
    )
    add_library(parser)
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Write the file and say what to do next."""
    from chamberwise.engine.store.whole_file import write_whole
    from chamberwise.exports.scaffold.render import new_pathway

    name = named(arguments.name)
    if arguments.over is not None:
        from chamberwise.tui.command.new_local import new_local

        return new_local(arguments, name)
    path = arguments.out / f"{name}.yaml"
    refuse_what_is_there(path)
    library = asked((), arguments.library).loaded.library
    if name in library.pathways:
        raise UnusableError(
            _("The library already has a pathway `{name}`. Choose another name.").format(name=name)
        )
    beginning = _beginning(name, arguments)
    schema = ((arguments.library or shipped()) / "schema" / "pathway.schema.json").resolve()
    if arguments.sheet is not None:
        text = _from_sheet(arguments.sheet, beginning, library, schema.as_uri())
    else:
        text = new_pathway(
            beginning,
            date.today(),
            schema.as_uri(),
            own_words=_has_no_words(library),
            closes=_can_close(library),
        )
    _refuse_unreadable(text, path)
    try:
        write_whole(path, text)
    except OSError as error:
        raise UnusableError(
            _("{path} cannot be written: {reason}.").format(path=path, reason=error.strerror)
        ) from error
    product(str(path))
    talk(
        _("Next: chamberwise check {path} --watch, then prove, walk and print it likewise.").format(
            path=path
        )
    )
    return Status.CLEAN


def _from_sheet(sheet: Path, beginning: Beginning, library: Library, schema: str) -> str:
    from chamberwise.exports.steps.pathway_text import pathway_text
    from chamberwise.tui.command.steps_reading import steps_in

    return pathway_text(steps_in(sheet, library), beginning, date.today(), schema)


def _beginning(name: str, arguments: Namespace) -> Beginning:
    """Return what was given, asked for at a terminal, or taken as it is."""
    from chamberwise.exports.scaffold.render import AUTHOR, SUMMARY, Beginning

    from_name = name.replace("-", " ").capitalize()
    return Beginning(
        name,
        _given(arguments.title, _("What is it called?"), from_name),
        _given(arguments.summary, _("For whom and when is it used?"), SUMMARY),
        _given(arguments.author, _("Which role writes it? Never a person's name."), AUTHOR),
    )


def _given(typed: str | None, question: str, otherwise: str) -> str:
    if typed is not None:
        return typed
    if not sys.stdin.isatty():
        return otherwise
    talk(f"{question} [{otherwise}]")
    try:
        return input().strip() or otherwise
    except EOFError:
        return otherwise


def _has_no_words(library: Library) -> bool:
    words = library.shared
    return "surgeon" not in words.duties or "common-practice" not in words.sources


def _can_close(library: Library) -> bool:
    """Whether the library closes every operation in one pathway and knows when one has begun."""
    tip = library.shared.findings.get("tip")
    values = [value.id for value in tip.values] if tip else []
    return CLOSING in library.pathways and all(name in values for name in NEEDED_TO_CLOSE)


def refuse_what_is_there(path: Path) -> None:
    """Raise where something of that name is there already: nothing is ever written over."""
    if path.exists() or path.is_symlink():
        raise UnusableError(
            _("{path} is there already. Choose another name, or move it away.").format(path=path)
        )


def _refuse_unreadable(text: str, path: Path) -> None:
    from chamberwise.engine.reading.library import read_text

    for problem in read_text(text, path.name).problems:
        what = problem.pointer[0] if problem.pointer else "text"
        raise UnusableError(
            _("This {what} cannot stand in a pathway: {message}.").format(
                what=what, message=problem.message
            )
        )


def named(typed: str) -> str:
    """Return what was typed as a name. Raises `UnusableError` for what is none."""
    from chamberwise.engine.reading.scalars import UntypedError
    from chamberwise.engine.reading.scalars import typed as read
    from chamberwise.engine.reading.shapes import NAME

    try:
        return str(read(typed, NAME))
    except UntypedError as error:
        raise UnusableError(
            _("`{typed}` is not {expected}. {advice}").format(
                typed=typed, expected=error.expected, advice=error.advice
            )
        ) from error
