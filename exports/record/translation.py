"""What is said of a library whose texts are shown in another language."""

from __future__ import annotations

from chamberwise.engine.language.languages import LANGUAGES
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.engine.language.unreviewed import unreviewed_texts
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.translating.doubts import MARK


def of_translation(library: Library, pathway: PathwayId) -> tuple[str, ...]:
    """Return whether anybody has read the translation, and how much of it stands in English."""
    found = library.translation
    if found is None:
        return ()
    language = LANGUAGES[found.language]
    said = unreviewed_texts(language)
    if found.is_reviewed:
        reviewed = _("{language}: reviewed against the source, no part of any approval.")
        said = reviewed.format(language=language.own_title)
    return (" ".join(filter(None, (said, texts_in_english(library, pathway)))),)


def texts_in_english(library: Library, pathway: PathwayId) -> str:
    """Return how much of a translated pathway stands in English; nothing where none does."""
    found = library.translation
    lacking = found.in_english[pathway] if found else 0
    if not found or not lacking:
        return ""
    count = ngettext(
        "{lacking} of {texts} texts stands in English, marked {mark}.",
        "{lacking} of {texts} texts stand in English, marked {mark}.",
        lacking,
    )
    return count.format(lacking=lacking, texts=found.texts[pathway], mark=MARK)


def reviewed_mark(library: Library) -> str:
    """Return what stands across the head of a sheet whose translation somebody has reviewed."""
    found = library.translation
    if found is None or not found.is_reviewed:
        return ""
    return _("TRANSLATION: NO PART OF ANY APPROVAL")
