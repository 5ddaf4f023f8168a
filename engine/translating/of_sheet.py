"""The texts that a unit's sheet translates: what they belong to, and what is wrong with them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from chamberwise.engine.diagnostics.problem import Pointer, Problem
from chamberwise.engine.model.local import Local
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.reading.local_sheet import LocalSheet
from chamberwise.engine.reading.translation_file import TranslatedText
from chamberwise.engine.reading.tree import Tree
from chamberwise.engine.translating import codes
from chamberwise.engine.translating.checking import OTHERS, no_such_language
from chamberwise.engine.translating.checking_texts import text_problems
from chamberwise.engine.translating.segments import VOCABULARY, Segments, originals


def belongs_to(text: TranslatedText, local: Local, every: Mapping[str, Segments]) -> str:
    """Return the pathway that a text is of, or the shared words.

    One that is named is meant; else the one below the sheet, then those it hands over to.
    """
    if text.within:
        return text.within
    known = (*local.covers, VOCABULARY)
    return next((name for name in known if text.at in every[name]), local.over)


def check_sheet_translations(
    loaded: Loaded, sheet: LocalSheet, local: Local, tree: Tree
) -> Iterator[Problem]:
    """Yield what is wrong with the translations of a sheet, held to the texts under it."""
    if not sheet.translations:
        return
    every = originals(loaded.library)
    for language, texts in sheet.translations.items():
        if language not in OTHERS:
            at: Pointer = ("translations", language)
            span = tree.span(at, at_key=True)
            yield codes.NO_SUCH_LANGUAGE.at(tree.file, at, span, *no_such_language(language))
            continue
        placed = [
            (each, name, every.get(name, {}))
            for each in texts
            for name in [belongs_to(each, local, every)]
        ]
        yield from text_problems(loaded, tree, placed, language)
