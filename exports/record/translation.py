"""What is said of a library whose texts are shown in another language."""

from __future__ import annotations

from chamberwise.engine.language.languages import LANGUAGES
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.engine.language.unreviewed import unreviewed_texts
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.translating.doubts import MARK
from chamberwise.exports.control.content import day
from chamberwise.exports.language.joining import one_after_another


def of_translation(library: Library, pathway: PathwayId) -> tuple[str, ...]:
    """Return whether anybody has read the translation, and how much of it stands in English."""
    found = library.translation
    if found is None:
        return ()
    language = LANGUAGES[found.language]
    said = translation_approval(library, pathway) or unreviewed_texts(language)
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


def translation_approval(library: Library, pathway: PathwayId) -> str:
    """Return who stands for the translation of a pathway, as a sentence; nothing if nobody does."""
    found = library.translation
    approved = found.approved.get(pathway) if found else None
    if not found or not approved:
        return ""
    told = _("{language}: translation approved by {who} on {day}.")
    who = one_after_another(approved.by)
    language = LANGUAGES[found.language].own_title
    return told.format(language=language, who=who, day=day(approved.on))
