"""What is perceived in the drills of a book, and whether it says what it should leave open."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.drill.generate import generate
from chamberwise.engine.drill.wording.clauses import Clause
from chamberwise.engine.drill.wording.phrasebook import phrasebook_of
from chamberwise.engine.drill.wording.triggers import says_trigger
from chamberwise.engine.model.drill import DrillBook
from chamberwise.engine.model.library import Library
from chamberwise.engine.reading.drills import Drills


def perceived(book: DrillBook) -> Iterator[tuple[Pointer, str]]:
    """Yield every text that is shown before anybody has said what it is, with its place."""
    for place, text in enumerate(book.decoys):
        yield ("decoys", place), text
    for opening in book.openings:
        yield ("openings", opening.id, "so far"), opening.so_far
        for place, text in enumerate(opening.cues):
            yield ("openings", opening.id, "cues", place), text
        for act, text in opening.calls:
            if act != book.announce:
                yield ("openings", opening.id, "calls", act), text
    for inject in book.injects:
        yield ("injects", inject.id, "shows"), inject.shows
    for each in book.scenarios:
        at: Pointer = ("scenarios", each.id)
        yield (*at, "title"), each.title
        yield (*at, "so far"), each.so_far
        for key, texts in (("brief", each.brief), ("cues", each.cues)):
            for place, text in enumerate(texts):
                yield (*at, key, place), text


def telling(library: Library, drills: Drills, book: DrillBook) -> Iterator[tuple[Pointer, str]]:
    """Yield every text that says what this is, in any of the words for it, with its place."""
    phrases = phrasebook_of(generate(library, book, drills.truth, drills.phrases, 0))
    for pointer, text in perceived(book):
        if text and says_trigger(phrases, Clause(text)):
            yield pointer, text
