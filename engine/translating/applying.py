"""A library with its texts in another language, for showing: what is walked stays what it was.

Files, trees and digests stay those of the source. A text without a translation that stands is
shown in English behind a mark. A pathway counts as approved where every text that it shows was
translated and every file of it was approved by somebody who did not translate it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from chamberwise.engine.approval.translations import stands as stands_approved
from chamberwise.engine.comparing.used import used_words
from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway, Status
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.translation import Translation, TranslationApproval
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.reading.translation_file import TranslatedText, TranslationFile
from chamberwise.engine.stamp.content import content_digest
from chamberwise.engine.translating.doubts import MARK
from chamberwise.engine.translating.of_sheet import belongs_to
from chamberwise.engine.translating.retelling import Say, retold_pathway, retold_words
from chamberwise.engine.translating.segments import VOCABULARY, originals
from chamberwise.engine.translating.standing import Standing, Standings, standings

THE_TRANSLATION = "translation"
"""Told among the parts in which an approved pathway is not what was approved."""


def translated(loaded: Loaded, language: str, files: Iterable[TranslationFile]) -> Loaded:
    """Return a library in another language; a unit's sheet lies over the files."""
    several = tuple(each for each in files if each.language == language)
    stood = stands(loaded, language, several)
    library = loaded.library
    translation = _translation(library, language, several, stood)
    pathways = {
        name: _standing(retold_pathway(pathway, saying(stood[name])), name in translation.approved)
        for name, pathway in library.pathways.items()
    }
    shared = retold_words(library.shared, saying(stood[VOCABULARY]))
    told = Library(shared, pathways, library.local, translation)
    fallen = {
        name: (THE_TRANSLATION,)
        for name, each in library.pathways.items()
        if each.is_approved and name not in translation.approved
    }
    return replace(loaded, library=told, fallen={**loaded.fallen, **fallen}, written=library)


def stands(loaded: Loaded, language: str, files: Iterable[TranslationFile]) -> dict[str, Standings]:
    """Return how each text of a library stands, by pathway, and those of the shared words."""
    every = originals(loaded.library)
    by_name: dict[str, list[TranslatedText]] = {name: [] for name in every}
    for text, name in _of_the_unit(loaded, language):
        by_name.get(name, []).append(text)
    for file in files:
        by_name.get(file.of, []).extend(file.texts)
    return {name: standings(segments, by_name[name], language) for name, segments in every.items()}


def _of_the_unit(loaded: Loaded, language: str) -> Iterable[tuple[TranslatedText, str]]:
    local = loaded.library.local
    file = loaded.files.get(loaded.sheet)
    if local is None or file is None or file.sheet is None:
        return
    every = originals(loaded.library)
    for text in file.sheet.translations.get(language, ()):
        yield text, belongs_to(text, local, every)


def saying(stood: Standings) -> Say:
    """Return what says each text as it stands: translated, or in English behind the mark."""

    def say(at: Pointer, text: str) -> str:
        found = stood[at]
        if found.standing is Standing.TRANSLATED and found.text:
            return found.text.says
        return f"{MARK} {text}"

    return say


def _standing(pathway: Pathway, is_approved: bool) -> Pathway:
    """Return a pathway as a draft, unless its translation was approved too."""
    if pathway.status is Status.APPROVED and not is_approved:
        return replace(pathway, status=Status.DRAFT)
    return pathway


def _translation(
    library: Library,
    language: str,
    files: tuple[TranslationFile, ...],
    stood: Mapping[str, Standings],
) -> Translation:
    shown = {name: [*_shown(library, name, stood)] for name in library.pathways}
    lacking = {
        name: sum(each is not Standing.TRANSLATED for each in texts)
        for name, texts in shown.items()
    }
    approved = {
        name: found
        for name in library.pathways
        if not lacking[name] and (found := _approval(library, name, files))
    }
    return Translation(
        language,
        {name: len(each) for name, each in shown.items()},
        lacking,
        approved,
        {name: content_digest(library, name) for name in library.pathways},
        frozenset(name for name, each in library.pathways.items() if each.is_approved),
    )


def _approval(
    library: Library, pathway: PathwayId, files: tuple[TranslationFile, ...]
) -> TranslationApproval | None:
    """Return who stands for all that a pathway shows; a unit's own texts go with its sheet."""
    needed = (*reached_by_handover(library, pathway), VOCABULARY)
    taken = [each for each in files if each.of in needed]
    is_whole = {each.of for each in taken} == {*needed}
    if not is_whole or not all(map(stands_approved, taken)):
        return None
    days = [each.approved_on for each in taken if each.approved_on]
    return TranslationApproval(tuple(dict.fromkeys(each.approved_by for each in taken)), max(days))


def _shown(
    library: Library, pathway: PathwayId, stood: Mapping[str, Standings]
) -> Iterable[Standing]:
    """Yield how each text stands that a pathway's walks and sheets can show."""
    used: frozenset[str] = frozenset()
    for name in reached_by_handover(library, pathway):
        yield from (each.standing for each in stood[name].values())
        used |= used_words(library, name)
    for at, each in stood[VOCABULARY].items():
        if at[0] == "rules" or at[1] in used:
            yield each.standing
