"""Which shared words a pathway uses, and so is changed by."""

from __future__ import annotations

from chamberwise.engine.checks.references import Of, of_words, references
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.words import Words

_NOT_WORDS = frozenset({Of.PHASE, Of.OUTCOME, Of.PATHWAY})


def used_words(library: Library, pathway: PathwayId) -> frozenset[str]:
    """Return the names of every word a pathway uses, and of those that such words use in turn."""
    found = {
        each.name for each in references(library.pathways[pathway]) if each.of not in _NOT_WORDS
    }
    words = library.words(pathway)
    size = -1
    while size != len(found):
        size = len(found)
        found |= {each.name for each in of_words(_only(words, found)) if each.of not in _NOT_WORDS}
    return frozenset(found)


def _only(words: Words, names: set[str]) -> Words:
    return Words(
        {name: each for name, each in words.findings.items() if name in names},
        {name: each for name, each in words.acts.items() if name in names},
        {name: each for name, each in words.duties.items() if name in names},
        {name: each for name, each in words.kit.items() if name in names},
    )
