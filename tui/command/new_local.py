"""`chamberwise new --over`: a unit's local sheet to start from."""

from __future__ import annotations

from argparse import Namespace
from datetime import date

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import UnusableError, asked, shipped
from chamberwise.tui.command.output import product, talk
from chamberwise.tui.command.status import Status


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
    loaded = asked((), arguments.library).loaded
    over = arguments.over
    if over not in loaded.file_of:
        advice = did_you_mean(over, loaded.file_of, _("`chamberwise list` shows those there are."))
        raise UnusableError(
            _("There is no pathway `{over}`. {advice}").format(over=over, advice=advice)
        )
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
