"""What is said before a drill of the language it is told in, and of the one it understands."""

from __future__ import annotations

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.engine.model.library import Library
from chamberwise.engine.reading.drills import Drills
from chamberwise.engine.translating.doubts import MARK
from chamberwise.exports.record.translation import of_translation


def drill_remarks(library: Library, drills: Drills, pathway: str) -> tuple[str, ...]:
    """Return what has to be known before; nothing where all is in the language of the files."""
    said = of_translation(library, pathway)
    if not said:
        return ()
    english = _(
        "Type in English: what you say is understood in English words alone. "
        "`?` twice brings a menu; its numbers need no words."
    )
    return (*said, *_in_english(drills, pathway), english)


def _in_english(drills: Drills, pathway: str) -> tuple[str, ...]:
    lacking, texts = drills.in_english.get(pathway, (0, 0))
    if not lacking:
        return ()
    told = ngettext(
        "Of the drill, {lacking} of {texts} texts stands in English, marked {mark}.",
        "Of the drill, {lacking} of {texts} texts stand in English, marked {mark}.",
        lacking,
    )
    return (told.format(lacking=lacking, texts=texts, mark=MARK),)
