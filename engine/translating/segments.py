"""The texts that can be translated: of each pathway and of the shared words, by place."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeAlias

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.keys.digest import short_digest
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.words import Words
from chamberwise.engine.translating.retelling import retold_pathway, retold_words

VOCABULARY = "vocabulary"
"""Stands for the shared words, where else the name of a pathway stands."""

OF_A_DRILL = "drill-"
"""What a translation is of begins so where it is of drills, not of a pathway."""

Segments: TypeAlias = Mapping[Pointer, str]
"""Texts by place, in document order, none of them empty."""


def text_digest(text: str) -> str:
    """Return the digest that binds a translation to its source; white space does not count.

    >>> text_digest("Hold still.") == text_digest("Hold  still. ")
    True
    """
    return short_digest(" ".join(text.split()))


def segments_of(whole: Pathway | Words) -> Segments:
    """Return the texts of a pathway, its own words among them, or of shared words."""
    found: dict[Pointer, str] = {}

    def keep(at: Pointer, text: str) -> str:
        found[at] = text
        return text

    if isinstance(whole, Pathway):
        retold_pathway(whole, keep)
    else:
        retold_words(whole, keep)
    return found


def originals(library: Library) -> dict[str, Segments]:
    """Return the texts of every pathway by its name, and those of the shared words."""
    return {
        **{name: segments_of(pathway) for name, pathway in library.pathways.items()},
        VOCABULARY: segments_of(library.shared),
    }
