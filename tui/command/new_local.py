"""`chamberwise new --over`: a unit's local sheet to start from."""

from __future__ import annotations

from argparse import Namespace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import UnusableError, asked, is_path, shipped
from chamberwise.tui.command.output import product, talk
from chamberwise.tui.command.status import Status

if TYPE_CHECKING:
    from chamberwise.engine.reading.library import Loaded


def new_local(arguments: Namespace, name: str) -> int:
    """Write a sheet over a pathway and say what to do next."""
    from chamberwise.engine.store.whole_file import write_whole
    from chamberwise.exports.scaffold.local_sheet import new_local_sheet
    from chamberwise.tui.walkable import problems_in_the_way

    path = arguments.out / f"{name}.yaml"
    if path.exists() or path.is_symlink():
        raise UnusableError(
            _("{path} is there already. Choose another name, or move it away.").format(path=path)
        )
    loaded, over = _below(arguments, path)
    if told := problems_in_the_way(loaded, loaded.file_of[over]):
        raise UnusableError(told)
    unit = " ".join((arguments.unit or name.replace("-", " ").title()).split())
    schema = (arguments.library or shipped()) / "schema" / "local-sheet.schema.json"
    where = schema.resolve().as_uri()
    text = new_local_sheet(loaded.library, over, name, unit, date.today(), where)
    try:
        write_whole(path, text)
    except OSError as error:
        raise UnusableError(
            _("{path} cannot be written: {reason}.").format(path=path, reason=error.strerror)
        ) from error
    product(str(path))
    talk(_("Next: set what is yours in it, then chamberwise check {path}").format(path=path))
    return Status.CLEAN


def _below(arguments: Namespace, path: Path) -> tuple[Loaded, str]:
    """Return the library and the pathway in it: one of its own, or a file beside the new sheet."""
    over, beside = arguments.over, path.parent / f"{arguments.over}.yaml"
    loaded = asked((), arguments.library).loaded
    if over in loaded.file_of:
        return loaded, over
    if not is_path(over) and beside.is_file():
        over = str(beside)
    if not is_path(over):
        advice = did_you_mean(over, loaded.file_of, _("`chamberwise list` shows those there are."))
        raise UnusableError(
            _("There is no pathway `{over}`. {advice}").format(over=over, advice=advice)
        )
    found = asked((over,), arguments.library)
    name = found.pathways[0] if found.pathways and found.under is None else ""
    if not name:
        raise UnusableError(
            _("{path} is no pathway. A sheet lies over a pathway.").format(path=over)
        )
    if Path(over).resolve() != (path.parent / f"{name}.yaml").resolve():
        raise UnusableError(
            _(
                "A sheet finds its pathway beside it, as {name}.yaml: write it there, with --out."
            ).format(name=name)
        )
    return found.loaded, name
