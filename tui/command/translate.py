"""`chamberwise translate`: the file in which somebody writes the texts of a pathway anew."""

from __future__ import annotations

from argparse import Namespace, _SubParsersAction
from pathlib import Path
from typing import TYPE_CHECKING, Any

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import (
    Asked,
    UnusableError,
    add_library,
    asked,
    refuse_place,
    shipped,
)
from chamberwise.tui.command.output import product, talk
from chamberwise.tui.command.status import Status

if TYPE_CHECKING:
    from chamberwise.engine.reading.library import File
    from chamberwise.engine.translating.segments import Segments

EXAMPLE = N_("""example:
  chamberwise translate posterior-capsule-rupture --language de
  chamberwise translate vocabulary --language de --out vocabulary.yaml
  chamberwise translate drill-dropped-nucleus --language de
  chamberwise translate our-unit.yaml --language de

The file keeps every translation that stands, shows what changed beside what
was translated, and has a place for each text that is new. `drill-ID` are the
texts of the drills of ID, `drill-truth` those that all drills share; what is
typed in a drill is understood in English alone. For a local sheet, the texts
that are its own are shown, to be put under `translations:`.

exit status:
  0 every text has a translation that stands, 1 some have none, 2 unusable input
""")


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser(
        "translate", help=_("write or refresh a translation"), epilog=_(EXAMPLE)
    )
    parser.add_argument(
        "name",
        metavar=_("ID or SHEET"),
        help=_("or `vocabulary`: the shared words; `drill-ID`: its drills"),
    )
    parser.add_argument(
        "--out", type=Path, metavar=_("FILE"), help=_("left out: its place beside the library")
    )
    add_library(parser)
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Write the file, or show what a sheet lacks, and say how the texts stand."""
    from chamberwise.engine.reading.library import shown as as_shown
    from chamberwise.engine.translating.segments import OF_A_DRILL, VOCABULARY, originals

    language = _language()
    library = arguments.library or shipped()
    if arguments.name.startswith(OF_A_DRILL):
        return _write(_segments_of_drill(arguments), arguments.name, language, library, arguments)
    shared = arguments.name == VOCABULARY
    found = asked(() if shared else (arguments.name,), arguments.library)
    if found.under is not None:
        return _of_sheet(found, language, arguments)
    name = VOCABULARY if shared else next(iter(found.pathways), "")
    if not name:
        raise UnusableError(
            _("There is no pathway in {file}. `chamberwise check` says why.").format(
                file=arguments.name
            )
        )
    folder = library if shared else Path(found.loaded.file_of[name]).resolve().parent
    segments = originals(found.loaded.library)[name]
    return _write(segments, name, language, Path(as_shown(folder)), arguments)


def _segments_of_drill(arguments: Namespace) -> Segments:
    """Return the texts of a book of drills, or those that all books share."""
    from chamberwise.engine.diagnostics.nearest import did_you_mean
    from chamberwise.engine.diagnostics.text import problem_text
    from chamberwise.engine.reading.drills import read_drills
    from chamberwise.engine.translating.drill_texts import drill_originals

    drills = read_drills(arguments.library or shipped())
    if drills.problems:
        told = "\n\n".join(problem_text(each, drills.texts) for each in drills.problems)
        raise UnusableError(told)
    every = drill_originals(drills)
    if arguments.name not in every:
        advice = did_you_mean(arguments.name, every, _("There are {known}.").format(
            known=", ".join(f"`{each}`" for each in every)
        ))  # fmt: skip
        message = _("There are no drills to translate under `{name}`. {advice}")
        raise UnusableError(message.format(name=arguments.name, advice=advice))
    return every[arguments.name]


def _language() -> str:
    from chamberwise.engine.language.languages import ENGLISH
    from chamberwise.engine.language.speaking import spoken

    if spoken() is ENGLISH:
        raise UnusableError(_("Say into which language: `chamberwise translate ID --language de`."))
    return spoken().code


def _write(segments: Segments, name: str, language: str, folder: Path, arguments: Namespace) -> int:
    """Write the file below the folder of what is translated, or where it is asked for."""
    from chamberwise.engine.store.whole_file import write_whole
    from chamberwise.engine.translating.finding import path_of
    from chamberwise.engine.translating.standing import Standing, counted, standings
    from chamberwise.engine.translating.writing import renewed

    usual = path_of(folder, language, name)
    path = arguments.out or usual
    if arguments.out:
        refuse_place(path)
    file = _as_it_is(path if path.exists() else usual, name, language)
    old = file.translation if file else None
    fresh = renewed(name, language, segments, old, _remarks(file.text) if file else "")
    try:
        write_whole(path, fresh.text)
    except OSError as error:
        why = error.strerror or str(error)
        message = _("{path} cannot be written: {why}. Name another file after --out.")
        raise UnusableError(message.format(path=path, why=why)) from error
    product(str(path))
    if fresh.taken_over:
        talk(_("Taken over from another place with the same text: {number}.").format(
            number=fresh.taken_over
        ))  # fmt: skip
    if fresh.put_aside:
        talk(_("Put aside under `aside:`, for their text is gone: {number}.").format(
            number=fresh.put_aside
        ))  # fmt: skip
    again = _read(path).translation
    assert again is not None
    counts = counted(standings(segments, again.texts, language).values())
    talk(_told(counts, len(segments)))
    return Status.CLEAN if counts[Standing.TRANSLATED] == len(segments) else Status.FINDINGS


def _told(counts: Any, texts: int) -> str:
    from chamberwise.engine.translating.standing import Standing

    return _(
        "{texts} texts: {translated} translated, {stale} stale, {doubtful} doubtful, "
        "{missing} missing. `chamberwise check` on the file names each."
    ).format(texts=texts, **{str(each): counts[each] for each in Standing})


def _as_it_is(path: Path, name: str, language: str) -> File | None:
    """Return the file that is to be renewed, if there is one, and refuse one that would lose."""
    from chamberwise.engine.diagnostics.text import problem_text
    from chamberwise.engine.translating.writing import line_commented_out

    if not path.exists():
        return None
    file = _read(path)
    if not file.is_whole or file.translation is None:
        told = "\n\n".join(problem_text(each, {file.shown_as: file.text}) for each in file.problems)
        message = _("{path} is left as it is until this is put right: what is in it could be lost.")
        raise UnusableError("\n\n".join(filter(None, (told, message.format(path=path)))))
    if (file.translation.of, file.translation.language) != (name, language):
        message = _("{path} is the translation of something else. Name another file after --out.")
        raise UnusableError(message.format(path=path))
    if line := line_commented_out(file.text):
        message = _(
            "{path}:{line}: a translation stands in a remark and would be lost. "
            "Take away the `#` before it."
        )
        raise UnusableError(message.format(path=path, line=line))
    return file


def _read(path: Path) -> File:
    from chamberwise.engine.reading.library import read_file

    return read_file(path)


def _remarks(text: str) -> str:
    """Return the remarks at the top of a file."""
    lines = text.splitlines()
    end = next((n for n, line in enumerate(lines) if not line.startswith("#")), len(lines))
    return "\n".join(lines[:end])


def _of_sheet(found: Asked, language: str, arguments: Namespace) -> int:
    from chamberwise.engine.translating.own_texts import own_texts
    from chamberwise.engine.translating.writing import sheet_block
    from chamberwise.tui.in_language import translations

    assert found.under is not None
    if found.loaded.library.local is None:
        message = _("The sheet cannot be carried out. `chamberwise check {file}` says why.")
        raise UnusableError(message.format(file=arguments.name))
    files = translations(arguments.library or shipped(), language, found.loaded)
    lacking = own_texts(found.under.base, found.loaded, language, files)
    if lacking:
        product(sheet_block(language, lacking))
    talk(_("Texts of the sheet's own without a translation: {number}.").format(
        number=len(lacking)
    ))  # fmt: skip
    return Status.FINDINGS if lacking else Status.CLEAN
