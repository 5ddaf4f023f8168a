"""From what was typed after `print` to what is wanted, and a beginning made with it."""

from __future__ import annotations

from argparse import Namespace
from contextlib import AbstractContextManager, nullcontext, suppress
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import Asked, UnusableError

if TYPE_CHECKING:
    from chamberwise.tui.sheets_beside import SheetsBeside
    from chamberwise.tui.wanted import Wanted

FORMS = {"pdf": ".pdf", "svg": ".svg", "png": ".png", "text": ".txt"}


def wanted_of(arguments: Namespace, found: Asked, pathway: str) -> Wanted:
    """Return what is wanted. Raises `UnusableError`."""
    from chamberwise.exports.paper.sizes import Paper, Turn
    from chamberwise.exports.printing.printing import Form
    from chamberwise.tui.wanted import Wanted

    if arguments.tiles and arguments.what not in ("wall-chart", "pack"):
        raise UnusableError(_("`--tiles` cuts a wall chart only. Leave it out."))
    form = _form(arguments)
    if form == "text" and (arguments.report or arguments.waive):
        raise UnusableError(
            _("The audit is of paper: `--report` and `--waive` need another format.")
        )
    out = Path(arguments.out) if arguments.out else None
    local = found.loaded.library.local_to(pathway)
    return Wanted(
        pathway,
        arguments.what,
        arguments.date or date.today(),
        Form(form),
        Paper(arguments.paper) if arguments.paper else None,
        Turn(arguments.turn) if arguments.turn else None,
        arguments.distance,
        arguments.unit or (local.unit if local else None),
        arguments.tiles,
        out,
        _is_folder(arguments, out),
        arguments.overwrite,
        tuple(arguments.waive),
        bool(arguments.report),
    )


def _form(arguments: Namespace) -> str:
    """Return the format: as asked for, else as the file to write ends, else PDF."""
    endings = {ending: name for name, ending in FORMS.items()}
    ended = endings.get(Path(arguments.out).suffix.lower(), "pdf") if arguments.out else "pdf"
    return str(arguments.format or ended)


def _is_folder(arguments: Namespace, out: Path | None) -> bool:
    """Whether what was typed after `--out` can only mean a folder."""
    if out is None:
        return False
    of_many = arguments.what == "pack" and arguments.format in ("svg", "png")
    return of_many or out.is_dir() or arguments.out.endswith(("/", "\\"))


def refuse_out(arguments: Namespace) -> None:
    """Raise where nothing can be written where it is asked to go, before any work is done."""
    if not arguments.out:
        return
    from chamberwise.exports.printing.files import (
        NotWrittenError,
        destination,
        refuse_strangers,
    )
    from chamberwise.exports.printing.printing import Form

    out = Path(arguments.out)
    is_folder = _is_folder(arguments, out)
    try:
        path = destination(out, "", Form(_form(arguments)), is_folder=is_folder)
        if not (arguments.overwrite or is_folder):
            refuse_strangers(path)
    except NotWrittenError as error:
        raise UnusableError(str(error)) from error


def beside_of(arguments: Namespace) -> AbstractContextManager[SheetsBeside | None]:
    """Return copies of the process that print, where there is a core for them."""
    from chamberwise.tui.copies import can_copy

    if _form(arguments) == "text" or not can_copy():
        return nullcontext()
    from chamberwise.exports.printing.kind import Kind
    from chamberwise.tui.sheets_beside import SheetsBeside

    return SheetsBeside(tuple(Kind) if arguments.what == "pack" else (Kind(arguments.what),))


def begin(beside: SheetsBeside, found: Asked, arguments: Namespace) -> None:
    """Begin with sheets that may be refused yet, unless something is amiss at first sight."""
    from chamberwise.engine.language.languages import ENGLISH
    from chamberwise.engine.language.speaking import spoken

    is_whole = all(found.loaded.files[name].is_whole for name in found.shown)
    if not is_whole or not found.pathways or spoken() is not ENGLISH:
        return  # a translation is made of what was checked
    with suppress(UnusableError):  # said when it is its turn
        beside.begin(found.loaded.library, wanted_of(arguments, found, found.pathways[0]))
