"""`chamberwise approve`: writes into a file who approved it, once nothing is against it."""

from __future__ import annotations

from argparse import Namespace, _SubParsersAction
from datetime import date
from os.path import realpath
from pathlib import Path
from typing import TYPE_CHECKING, Any

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import Asked, UnusableError, add_library, asked, shipped
from chamberwise.tui.command.output import product, talk
from chamberwise.tui.command.status import Status
from chamberwise.tui.command.typed import day

if TYPE_CHECKING:
    from chamberwise.engine.reading.library import File

EXAMPLE = N_("""example:
  chamberwise approve our-unit.yaml --by "Dr A. Example, clinical lead"
  chamberwise approve my-pathway.yaml --by "Clinical lead" --on 2026-11-28
  chamberwise approve translations/de/my-pathway.yaml --by "Ophthalmologist"

The approver is not among the authors, every choice is made, no check finds an
error, every safety rule holds or is switched off by name, and the edition is a
whole number. Whoever approves a translation has not translated it, and every
text in it stands. What was approved is written down as a digest: after any
later edit the file counts as a draft again.
""")


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser("approve", help=_("record who approved it"), epilog=_(EXAMPLE))
    parser.add_argument(
        "name", metavar=_("ID or FILE"), help=_("a pathway, a unit's local sheet or a translation")
    )
    parser.add_argument(
        "--by", required=True, metavar=_("NAME"), help=_("who approves it, with office")
    )
    parser.add_argument("--on", type=day, metavar=_("DATE"), help=_("when; left out: today"))
    add_library(parser)
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Approve, or say everything that is against it."""
    today = date.today()
    on = arguments.on or today
    by = " ".join(arguments.by.split())
    if not by or not by.isprintable():
        raise UnusableError(_('Say who approves it: --by "NAME, OFFICE".'))
    if on > today:
        raise UnusableError(
            _("{on} is still to come. An approval has a day that was.").format(on=on.isoformat())
        )
    library = arguments.library or _library_of(Path(arguments.name))
    found = asked((arguments.name,), library)
    file = found.under.sheet if found.under else found.loaded.files[found.shown[0]]
    if file.translation is None:
        _refuse_unreadable(found)
    against = [*_against(found, file, by, on, library or shipped())]
    if against:
        for each in against:
            talk(f"- {each}")
        talk(
            _("{shown_as} is not approved, and nothing was written.").format(shown_as=file.shown_as)
        )
        return Status.FINDINGS
    _write(found, file, by, on)
    product(file.shown_as)
    talk(
        _("Approved by {by} on {on}. Any later edit makes it a draft again.").format(
            by=by, on=on.isoformat()
        )
    )
    return Status.CLEAN


def _library_of(path: Path) -> Path | None:
    """Return the library that a translation lies in, where its place tells."""
    from chamberwise.engine.translating.finding import FOLDER

    above = Path(realpath(path)).parents
    lies_in_one = len(above) > 2 and above[1].name == FOLDER
    return above[2] if lies_in_one and (above[2] / "vocabulary").is_dir() else None


def _refuse_unreadable(found: Asked) -> None:
    from chamberwise.tui.walkable import problems_in_the_way

    told = problems_in_the_way(found.loaded, found.shown[0])
    if told:
        raise UnusableError(told)


def _against(found: Asked, file: File, by: str, on: date, library: Path) -> list[str]:
    """Return every reason against the approval, each with what to do."""
    if file.translation is not None:
        from chamberwise.engine.reading.drills import read_drills
        from chamberwise.engine.translating.drill_texts import drill_originals
        from chamberwise.tui.approving_translation import reasons_against_translation

        of_drills = drill_originals(read_drills(library))
        return reasons_against_translation(found.loaded, file, by, of_drills)
    from chamberwise.tui.approving import reasons_against

    talk(_("Checking and proving first. This may take a minute."))
    return reasons_against(found.loaded, found.pathways[0], found.checked, by, on)


def _write(found: Asked, file: File, by: str, on: date) -> None:
    from chamberwise.engine.approval.recording import UnwritableError, with_approval
    from chamberwise.engine.approval.sealing import seal_of
    from chamberwise.engine.approval.translations import seal_of_translation
    from chamberwise.engine.store.whole_file import write_bytes_whole

    path = Path(file.shown_as)
    seal = (
        seal_of_translation(file.translation)
        if file.translation
        else seal_of(found.loaded.library, found.pathways[0])
    )
    try:
        mark = b"\xef\xbb\xbf" if path.read_bytes().startswith(b"\xef\xbb\xbf") else b""
        text = with_approval(file.text, file.tree, by, on, seal)
        _refuse_misread(text, file)
        write_bytes_whole(path, mark + text.encode())
    except UnwritableError as error:
        raise UnusableError(
            _("{shown_as} cannot take the approval. {error}").format(
                shown_as=file.shown_as, error=error
            )
        ) from error
    except OSError as error:
        raise UnusableError(
            _("{shown_as} cannot be written: {reason}.").format(
                shown_as=file.shown_as, reason=error.strerror
            )
        ) from error


def _refuse_misread(text: str, file: File) -> None:
    """Refuse to write what would not be read as the same file with an approval."""
    from chamberwise.engine.approval.recording import UnwritableError
    from chamberwise.engine.reading.library import read_text

    again = read_text(text, file.shown_as)
    if again.problems or not (again.pathway or again.sheet or again.translation):
        raise UnwritableError(_("Write each key of its head on a line of its own."))
