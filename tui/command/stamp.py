"""`chamberwise stamp`: whether a printed sheet is current, and what hangs where."""

from __future__ import annotations

from argparse import Namespace, _SubParsersAction
from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

from chamberwise.engine.language.texts import N_, ngettext
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import UnusableError, add_library, asked, shipped
from chamberwise.tui.command.output import product, product_json, table, talk
from chamberwise.tui.command.status import Status
from chamberwise.tui.command.typed import add_on

if TYPE_CHECKING:
    from chamberwise.engine.model.library import Library
    from chamberwise.engine.stamp.copies import Copy, Register
    from chamberwise.engine.stamp.verdict import Current, Printable, Superseded, Verdict

EXAMPLE = N_("""example:
  chamberwise stamp
  chamberwise stamp 7QK2-M4XP-3
  chamberwise stamp 7qk2m4xp3 --hangs "Theatre 2, circulating side"
""")


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser("stamp", help=_("is a printed sheet current"), epilog=_(EXAMPLE))
    parser.add_argument(
        "code",
        nargs="*",
        metavar=_("CODE"),
        help=_("as on the sheet; left out: every copy registered"),
    )
    parser.add_argument(
        "--hangs",
        metavar=_("PLACE"),
        help=_('where a copy hangs, never a person\'s name; "" once every copy is taken down'),
    )
    parser.add_argument("--format", choices=("text", "json"), default="text")
    add_on(parser)
    add_library(parser)
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Tell of one stamp, or of every copy; findings where one is not current."""
    from chamberwise.engine.store.home import register_path
    from chamberwise.engine.store.register_file import RegisterError, read

    typed = " ".join(arguments.code)
    if arguments.hangs is not None and not typed:
        raise UnusableError(_("`--hangs` needs a stamp before it. Type it as it is on the sheet."))
    try:
        register = read(register_path())
        return _one(typed, register, arguments) if typed else _all(register, arguments)
    except RegisterError as error:
        raise UnusableError(str(error)) from error


def _known(
    copies: Sequence[Copy], arguments: Namespace, typed: str = ""
) -> tuple[dict[str, Library], dict[str, Printable]]:
    """Return the library by language, and all its stamps.

    Files that copies were printed from belong to it. Other languages are looked at for copies in
    them, and for a stamp that nothing else has.
    """
    from chamberwise.engine.keys.base32 import as_meant
    from chamberwise.engine.language.languages import ENGLISH
    from chamberwise.engine.stamp.verdict import stamps
    from chamberwise.engine.translating.checking import OTHERS
    from chamberwise.exports.printing.sheet_name import sheet_names
    from chamberwise.tui.in_language import translated_into

    sources = dict.fromkeys(
        copy.source for copy in copies if copy.source and Path(copy.source).is_file()
    )
    loaded = [asked((each,) if each else (), arguments.library).loaded for each in ("", *sources)]
    now: dict[str, Printable] = {}
    for read in loaded:
        now |= stamps(read.library, sheet_names(ENGLISH.code))
    is_met = bool(copies) or as_meant(typed) in map(as_meant, now)
    libraries = {ENGLISH.code: loaded[-1].library}
    for language in {copy.language for copy in copies} & {*OTHERS} if is_met else OTHERS:
        for read in loaded:
            told = translated_into(read, arguments.library or shipped(), language).library
            libraries[language] = told
            now |= stamps(told, sheet_names(language))
    return libraries, now


def _one(typed: str, register: Register, arguments: Namespace) -> Status:
    from chamberwise.engine.keys.base32 import as_meant
    from chamberwise.engine.language.languages import ENGLISH
    from chamberwise.engine.stamp.verdict import Current, Unknown, verdict
    from chamberwise.exports.stamp.extract import stamp_shown
    from chamberwise.exports.stamp.machine import stamp_values
    from chamberwise.exports.stamp.text import stamp_text

    copies = [copy for copy in register.copies if as_meant(copy.code) == as_meant(typed)]
    libraries, now = _known(copies, arguments, typed)
    found = verdict(typed, now, register)
    library = libraries.get(_language(found), libraries[ENGLISH.code])
    if arguments.hangs is not None and not isinstance(found, Unknown):
        where = _place(arguments.hangs)
        if not where:
            return _taken_down(found, arguments)
        found = _hung(found, where, library, arguments)
    shown = stamp_shown(found, library, register, arguments.on or date.today())
    if arguments.format == "json":
        product_json(stamp_values(shown))
    else:
        product(stamp_text(shown))
    return Status.CLEAN if isinstance(found, Current) else Status.FINDINGS


def _language(found: Verdict) -> str:
    """Return the language of a sheet; that of one nobody knows is as good as any."""
    from chamberwise.engine.language.languages import ENGLISH
    from chamberwise.engine.stamp.verdict import Current, Superseded

    if isinstance(found, Current):
        return found.printable.language
    return found.copies[-1].language if isinstance(found, Superseded) else ENGLISH.code


def _place(typed: str) -> str:
    from chamberwise.exports.printing.registering import NoPlaceError, place

    try:
        return place(typed)
    except NoPlaceError as error:
        raise UnusableError(str(error)) from error


def _hung(
    found: Current | Superseded, where: str, library: Library, arguments: Namespace
) -> Current | Superseded:
    """Keep where a copy hangs; one that was never registered counts from now."""
    from chamberwise.engine.store.home import register_path
    from chamberwise.engine.store.register_file import hang, read
    from chamberwise.exports.printing.registering import found_copy

    copy, content = found_copy(found, library, arguments.on or date.today())
    if hang(register_path(), found.code, where, content, copy) is None:
        talk(_("A copy is known to hang there already: {where}.").format(where=where))
    else:
        talk(_("Kept: a copy hangs at {where}.").format(where=where))
    return replace(found, copies=read(register_path()).of(found.code))


def _taken_down(found: Current | Superseded, arguments: Namespace) -> Status:
    from chamberwise.engine.store.home import register_path
    from chamberwise.engine.store.register_file import take_down

    gone = take_down(register_path(), found.code)
    if arguments.format == "json":
        product_json({"stamp": found.code, "taken off the register": gone})
    else:
        told = ngettext(
            "Taken off the register: {count} copy.",
            "Taken off the register: {count} copies.",
            gone,
        )
        product(told.format(count=gone))
    return Status.CLEAN


def _all(register: Register, arguments: Namespace) -> Status:
    from chamberwise.exports.stamp.content import Worth
    from chamberwise.exports.stamp.extract import copies_shown
    from chamberwise.exports.stamp.machine import register_values
    from chamberwise.exports.stamp.text import HEADS, register_rows

    copies = copies_shown(register, _known(register.copies, arguments)[1])
    if arguments.format == "json":
        product_json(register_values(copies))
    elif copies:
        product(table(register_rows(copies), tuple(_(head) for head in HEADS)))
    else:
        talk(_("No copy is registered yet. `chamberwise print` registers what it prints."))
    old = [each for each in copies if each.worth is not Worth.CURRENT]
    if old and arguments.format == "text":
        talk(
            _("To be taken down: {count}. `chamberwise stamp CODE` says what changed.").format(
                count=len(old)
            )
        )
    return Status.FINDINGS if old else Status.CLEAN
