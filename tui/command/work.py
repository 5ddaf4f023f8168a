"""`chamberwise work`: a calculation with every line of its working."""

from __future__ import annotations

import sys
from argparse import Namespace, _SubParsersAction
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, Any

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import UnusableError, refuse_place
from chamberwise.tui.command.output import product, product_json, talk
from chamberwise.tui.command.status import Status

if TYPE_CHECKING:
    from chamberwise.engine.working.form import Calculation
    from chamberwise.engine.working.working import Working

LOOKED_AT = 4096
"""Bytes at the beginning of a file, by which a calendar of ours is known."""
EXAMPLE = N_("""example:
  chamberwise work
  chamberwise work srk-t
  chamberwise work srk-t AL=23.5 K="7.7 mm" A=118.7 target=-0.25
  chamberwise work lens-to-sulcus --ask
  chamberwise work after-care-dates operated=2028-02-25 after=vitreous-loss \\
      holidays=GB-ENG --calendar reviews.ics

For rehearsal and preparation, never live care. Check by hand against the
unit's own biometry and formulary. Follow local protocol.
""")


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser(
        "work", help=_("a calculation, line by line"), epilog=_(EXAMPLE), intermixed=True
    )
    parser.add_argument("name", nargs="?", metavar=_("NAME"), help=_("without it: which there are"))
    parser.add_argument(
        "typed",
        nargs="*",
        metavar=_("INPUT=VALUE"),
        help=_("what the calculation takes; without any: what that is, where something is needed"),
    )
    parser.add_argument("--inputs", action="store_true", help=_("show what the calculation takes"))
    parser.add_argument("--format", choices=("text", "json", "csv"), default="text")
    parser.add_argument("--ask", action="store_true", help=_("ask for each input, line by line"))
    parser.add_argument(
        "--calendar",
        type=Path,
        metavar=_("FILE"),
        help=_("also write the days as an iCalendar file"),
    )
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """List, describe, or work; unusable where a figure is refused."""
    if arguments.name is None:
        return _list(arguments.format)
    of = named(arguments.name)
    typed = _typed(arguments.typed)
    needed = any(each.required for each in of.inputs)
    if arguments.inputs or (needed and not typed and not arguments.ask):
        return _describe(of, arguments.format)
    if arguments.ask:
        from chamberwise.tui.line.form import asked_for

        typed = asked_for(of, typed)
    return _work(of, typed, arguments)


def _work(of: Calculation, typed: dict[str, str], arguments: Namespace) -> int:
    from chamberwise.engine.working.refusal import RefusedError
    from chamberwise.engine.working.run import worked

    try:
        working = worked(of, typed)
    except RefusedError as error:
        for each in error.refusals:
            talk(_("refused: {refusal}").format(refusal=each))
        talk(_("`chamberwise work {name} --inputs` shows what it takes.").format(name=of.name))
        return Status.UNUSABLE
    if arguments.calendar:
        _write_calendar(working, arguments.calendar)
    _show(working, arguments.format)
    return Status.CLEAN


def named(name: str) -> Calculation:
    """Return a calculation. Raises `UnusableError` for a name that is none."""
    from chamberwise.engine.diagnostics.nearest import did_you_mean
    from chamberwise.engine.working.registry import NAMES, calculation

    if name not in NAMES:
        advice = did_you_mean(name, NAMES, _("`chamberwise work` lists those there are."))
        raise UnusableError(
            _("There is no calculation `{name}`. {advice}").format(name=name, advice=advice)
        )
    return calculation(name)


def _typed(words: list[str]) -> dict[str, str]:
    typed: dict[str, str] = {}
    for each in words:
        name, equals, value = each.partition("=")
        if not equals:
            raise UnusableError(
                _("`{typed}` is no INPUT=VALUE. Write it as `K=43.5`.").format(typed=each)
            )
        if name in typed:
            raise UnusableError(_("`{name}` is given twice. Give it once.").format(name=name))
        typed[name] = value
    return typed


def _list(form: str) -> int:
    from chamberwise.engine.working.registry import calculations

    if form == "json":
        from chamberwise.exports.working.machine import form as form_of

        product_json([form_of(each) for each in calculations()])
    else:
        from chamberwise.exports.working.described import listed

        product(listed(calculations()))
        talk(_("`chamberwise work NAME --inputs` shows what a calculation takes."))
    return Status.CLEAN


def _describe(of: Calculation, form: str) -> int:
    if form == "json":
        from chamberwise.exports.working.machine import form as form_of

        product_json(form_of(of))
    else:
        from chamberwise.exports.working.described import described

        product(described(of))
    return Status.CLEAN


def _show(working: Working, form: str) -> None:
    if form == "json":
        from chamberwise.exports.working.machine import values

        product_json(values(working))
    elif form == "csv":
        from chamberwise.exports.working.csv import csv_text

        product(csv_text(working))
    else:
        from chamberwise.exports.working.text import text

        product(writable(text(working)))


def writable(text: str) -> str:
    """Return a text with signs that the output can write: a lost times sign is a lost figure."""
    try:
        "×".encode(sys.stdout.encoding or "utf-8")
    except UnicodeEncodeError:
        return text.replace("×", "*")
    return text


def _is_a_strangers(path: Path) -> str:
    """Return why a file must not be written over, or nothing: our own calendars may be."""
    from chamberwise.exports.working.calendar import MADE_BY

    if not path.exists():
        return ""
    with suppress(OSError), path.open("rb") as stream:
        if MADE_BY.encode() in stream.read(LOOKED_AT):
            return ""
    return _("{path} is there already and is no calendar of ours. Name another file.").format(
        path=path
    )


def _write_calendar(working: Working, path: Path) -> None:
    from chamberwise.engine.store.whole_file import write_bytes_whole
    from chamberwise.exports.working.calendar import calendar

    if not any(each.day for each in working.results):
        raise UnusableError(
            _("`{name}` gives no days, so there is no calendar to write.").format(name=working.name)
        )
    refuse_place(path)
    if why := _is_a_strangers(path):
        raise UnusableError(why)
    try:
        write_bytes_whole(path, calendar(working))
    except OSError as error:
        raise UnusableError(
            _("{path} cannot be written: {reason}.").format(path=path, reason=error.strerror)
        ) from error
    talk(_("wrote {path}").format(path=path))
