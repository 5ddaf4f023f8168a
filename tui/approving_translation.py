"""What stands against approving a translation."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from chamberwise.engine.approval.people import is_one_of
from chamberwise.engine.diagnostics.problem import Problem, Severity, pointer_text
from chamberwise.engine.diagnostics.text import place
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.engine.reading.library import File, Loaded
from chamberwise.engine.reading.translation_file import TranslationFile
from chamberwise.engine.translating import codes
from chamberwise.engine.translating.checking import check_translation
from chamberwise.engine.translating.segments import Segments, originals
from chamberwise.engine.translating.standing import Standing, standings

_TO_BE_SETTLED = (codes.NOT_APPROVED.slug, codes.EDITED.slug)
MOST_NAMED = 3


def reasons_against_translation(
    loaded: Loaded, file: File, by: str, of_drills: Mapping[str, Segments]
) -> list[str]:
    """Return every reason against it, each with what to do; none where it may be approved.

    `of_drills` are the texts of drills, for translations of them.
    """
    translation = file.translation
    assert translation is not None
    found = [*_of_head(translation, by)]
    problems = [*file.problems, *check_translation(loaded, file, of_drills)]
    found += [_told(each) for each in problems if _weighs(each)]
    found += _left_in_english({**originals(loaded.library), **of_drills}, translation)
    return list(dict.fromkeys(found))


def _of_head(file: TranslationFile, by: str) -> Iterator[str]:
    if not file.translators:
        yield _("nobody is named who translated it: write `translated by: [NAME]` in its head.")
    elif is_one_of(by, file.translators):
        yield _("{by} is among the translators: let somebody else approve it.").format(by=by)


def _left_in_english(every: Mapping[str, Segments], file: TranslationFile) -> Iterator[str]:
    """Yield, once, that texts stand in English still, and the first of them by place."""
    stood = standings(every.get(file.of, {}), file.texts, file.language)
    open_ones = [at for at, each in stood.items() if each.standing is not Standing.TRANSLATED]
    if open_ones:
        told = ngettext(
            "{number} text is missing, stale or doubtful, and shown in English: {places}.",
            "{number} texts are missing, stale or doubtful, and shown in English: {places}.",
            len(open_ones),
        )
        first = ", ".join(f"`{pointer_text(at)}`" for at in open_ones[:MOST_NAMED])
        more = " ..." if len(open_ones) > MOST_NAMED else ""
        yield told.format(number=len(open_ones), places=f"{first}{more}")


def _weighs(problem: Problem) -> bool:
    return problem.severity is Severity.ERROR and problem.code not in _TO_BE_SETTLED


def _told(problem: Problem) -> str:
    return f"{place(problem.file, problem.span)}: {problem.message}. {problem.advice}"
