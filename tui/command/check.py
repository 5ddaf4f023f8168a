"""`chamberwise check`: every problem of every file asked for, in one run."""

from __future__ import annotations

from argparse import Namespace, _SubParsersAction
from collections.abc import Iterator, Mapping
from datetime import date, datetime
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
from chamberwise.tui.command.output import product, product_json, talk
from chamberwise.tui.command.status import Status
from chamberwise.tui.command.typed import add_on

if TYPE_CHECKING:
    from chamberwise.engine.diagnostics.problem import Problem
    from chamberwise.engine.reading.drills import Drills
    from chamberwise.engine.reading.library import File, Loaded
    from chamberwise.engine.translating.segments import Segments
    from chamberwise.tui.command.watching import Watching

EXAMPLE = N_("""example:
  chamberwise check                          the whole library
  chamberwise check my-pathway.yaml --watch  again at every save
  chamberwise check our-unit.yaml            a local sheet and what it lies over
""")


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser("check", help=_("read and check pathways"), epilog=_(EXAMPLE))
    parser.add_argument(
        "names", nargs="*", metavar=_("ID or FILE"), help=_("left out: the library")
    )
    add_library(parser)
    add_local(parser)
    parser.add_argument("--watch", action="store_true", help=_("check again at every save"))
    parser.add_argument("--format", choices=("text", "json"), default="text")
    add_on(parser)
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Check once, or at every save until interrupted."""
    from chamberwise.tui.command.watching import Watching, after_a_save, lying

    watching = Watching()
    before = lying(arguments, watching.read)
    status = _once(arguments, watching)
    while arguments.watch:
        talk("\n" + _("Watching. Save the file to check it again; Ctrl+C stops."))
        before = {**lying(arguments, watching.read), **before}
        before = after_a_save(arguments, watching.read, before)
        talk(f"\n{datetime.now():%H:%M:%S}  " + "-" * 40)
        try:
            status = _once(arguments, watching)
        except UnusableError as error:
            talk(str(error))
    return status


def _once(arguments: Namespace, watching: Watching) -> int:
    from chamberwise.engine.diagnostics.machine import problem_values
    from chamberwise.engine.diagnostics.problem import Severity
    from chamberwise.engine.diagnostics.text import problem_text, summary

    found = asked(arguments.names, arguments.library, arguments.local, watching.read)
    problems: list[Problem] = []
    files = len(found.checked)
    for more, texts, translations in _told_in_turn(found, arguments, watching):
        files += translations
        problems += more
        if arguments.format == "text":
            for problem in more:
                product(problem_text(problem, {**found.loaded.texts, **texts}) + "\n")
    if arguments.format == "json":
        product_json(problem_values(problems))
    else:
        product(summary(problems, files))
    return _status(found, any(p.severity is not Severity.NOTICE for p in problems))


def _told_in_turn(
    found: Asked, arguments: Namespace, watching: Watching
) -> Iterator[tuple[list[Problem], dict[str, str], int]]:
    """Yield problems as they are found, the texts they are of, and how many translations are."""
    from chamberwise.engine.drill.checking.check import check_drills
    from chamberwise.engine.reading.drills import read_drills
    from chamberwise.engine.translating.checking import check_translation
    from chamberwise.engine.translating.drill_texts import drill_originals

    drills: Drills | None = None
    of_drills: Mapping[str, Segments] | None = None
    if any(found.loaded.files[name].translation for name in found.checked):
        drills = read_drills(arguments.library or shipped())
        of_drills = drill_originals(drills)
    yield _problems(found, arguments.on or date.today(), watching, of_drills), {}, 0
    drills = drills or read_drills(arguments.library or shipped())
    yield check_drills(found.loaded, drills, found.pathways), drills.texts, 0
    for file in _translations(arguments):
        of_drills = of_drills or drill_originals(drills)
        problems = [*file.problems, *check_translation(found.loaded, file, of_drills)]
        yield problems, {file.shown_as: file.text}, 1


def _translations(arguments: Namespace) -> list[File]:
    """Return every translation of the library, where all of it is asked for."""
    from chamberwise.engine.translating.finding import read_translations

    if arguments.names or arguments.local:
        return []
    return read_translations(arguments.library or shipped())


def _problems(
    found: Asked, today: date, watching: Watching, of_drills: Mapping[str, Segments] | None
) -> list[Problem]:
    """Return every problem; under a unit's sheet, with the lines of the sheet that brought it."""
    from chamberwise.engine.checks.run import check_files

    if found.under is not None:
        under = found.under
        return _under(under.base, under.sheet, found.loaded, found.shown, today, watching)
    problems = check_files(found.loaded, found.checked, today, of_drills=of_drills)
    for name in found.checked:
        if found.loaded.files[name].sheet is not None:
            problems += _of_a_sheet(found.loaded, name, today, watching)
    return list(dict.fromkeys(problems))


def _of_a_sheet(base: Loaded, name: str, today: date, watching: Watching) -> list[Problem]:
    """Return the problems of a sheet that lies among the pathways."""
    from chamberwise.engine.local.localising import localised

    sheet = base.files[name]
    loaded = localised(base, sheet)
    over = sheet.sheet.local.over if sheet.sheet else ""
    shown = tuple(filter(None, (base.file_of.get(over),)))
    return _under(base, sheet, loaded, shown, today, watching)


def _under(
    base: Loaded,
    sheet: File,
    loaded: Loaded,
    shown: tuple[str, ...],
    today: date,
    watching: Watching,
) -> list[Problem]:
    from chamberwise.engine.checks.run import check_files

    problems = check_files(loaded, dict.fromkeys((sheet.shown_as, *shown)), today)
    if loaded.library.local is None:
        return problems
    from chamberwise.engine.local.blaming import blamed

    return blamed(problems, sheet, watching.below(base, shown, today))


def _status(found: Asked, has_findings: bool) -> int:
    if any(found.loaded.files[name].tree.root is None for name in found.checked):
        return Status.UNUSABLE
    return Status.FINDINGS if has_findings else Status.CLEAN
