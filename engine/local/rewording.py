"""Whether a place holds a text that people read, which is all that a wording may touch."""

from __future__ import annotations

from chamberwise.engine.checks.texts import of_words, texts
from chamberwise.engine.diagnostics.problem import Problem, pointer_text
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.local import codes
from chamberwise.engine.local.locating import Located
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.reading.tree import Tree


def no_text(loaded: Loaded, sheet: Tree, place: Located) -> Problem | None:
    """Return the problem of a wording for what is no text of a pathway or a shared word."""
    file = loaded.files[place.file]
    every = texts(file.pathway) if file.pathway else of_words(file.words) if file.words else ()
    if any(text.pointer == place.place for text in every):
        return None
    message = _("`{place}` is no text that people read").format(place=pointer_text(place.place))
    advice = _("Name the text itself, or make the change under `changes:`.")
    said = place.operation.said
    return codes.NOT_FOR_A_SHEET.at(sheet.file, said, sheet.span(said), message, advice)
