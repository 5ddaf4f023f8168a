"""When a look suffices: most pathways need no search through every state.

Two kinds of questions are put to the states. *Never*: no branch comes up undecided, no value lacks
an answer; for these the form of the step is often proof enough. *Sometimes*: every step comes up,
every question is put, every finding a branch names is known there on some walk; for these a few
walks are witness enough.
"""

from __future__ import annotations

from collections.abc import Sequence, Set
from functools import lru_cache
from itertools import product
from math import prod

from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.exploration.explore import explore
from chamberwise.engine.exploration.explored import Explored, Seen
from chamberwise.engine.exploration.widest import widest
from chamberwise.engine.meaning.layout import Field, layout_of
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import CANNOT_TELL, Branch, PathwayId, Question, Step, StepId
from chamberwise.engine.proof.sighting import Sighted, sighted

MOST_COMBINATIONS = 4096
A_FEW = 16
"""How many states of each step, at a time, show of most steps all that is asked."""
MORE = 192
"""How many show it of most of the others, on walks that still lead there."""


def safe_by_form(library: Library, pathway: Pathway, entries: Sequence[PathwayId]) -> bool:
    """Whether no step can come up undecided or unanswered, whatever is known there."""
    return not doubtful(library, pathway, entries)


def doubtful(library: Library, pathway: Pathway, entries: Sequence[PathwayId]) -> frozenset[Place]:
    """Return the steps that may come up undecided or unanswered, as far as their form tells."""
    possible: dict[Place, int] = {}
    for name in entries:
        for place, bits in _widest(library, name).items():
            possible[place] = possible.get(place, 0) | bits
    places = {Place(pathway.id, name): step for name, step in pathway.steps.items()}
    return frozenset(
        place
        for place, step in places.items()
        if not (
            _answers_all(library, pathway, step, possible.get(place, 0))
            if isinstance(step, Question)
            else not isinstance(step, Branch) or _decides_always(library, pathway, step)
        )
    )


@lru_cache(maxsize=16)
def _widest(library: Library, pathway: PathwayId) -> dict[Place, int]:
    return widest(compiled(library, pathway))


def _answers_all(library: Library, pathway: Pathway, question: Question, possible: int) -> bool:
    answered = {value for answer in question.answers for value in answer.means}
    field = layout_of(library).field(pathway.id, question.ask)
    return set(field.values(possible)) <= answered and any(
        answer.id == CANNOT_TELL for answer in question.answers
    )


def _decides_always(library: Library, pathway: Pathway, branch: Branch) -> bool:
    if branch.not_known is None:
        return False
    if branch.otherwise is not None:
        return True
    names = list(dict.fromkeys(name for row in branch.rows for name, _ in row.when.terms))
    values = [[value.id for value in library.finding(pathway.id, name).values] for name in names]
    if prod(map(len, values)) > MOST_COMBINATIONS:
        return False
    rows = [dict(row.when.terms) for row in branch.rows]
    return all(
        any(all(here[name] in wanted for name, wanted in row.items()) for row in rows)
        for here in (dict(zip(names, combination, strict=True)) for combination in product(*values))
    )


def sightings(
    library: Library,
    pathway: Pathway,
    entries: Sequence[PathwayId],
    by_arrows: Set[StepId],
    closely: frozenset[Place],
) -> tuple[Sighted, ...]:
    """Return by entry what walks show, as much of it as settles what is asked of a pathway.

    Of the steps to look at closely, all that walks show there. Of the others first a few states of
    each step, and then, of what these did not show, more and at last all.
    """
    seen: dict[PathwayId, Sighted] = {}

    def look(entry: PathwayId, a_spot: int | None, towards: frozenset[Place]) -> None:
        more = seen_from(library, entry, a_spot, towards)
        seen[entry] = seen[entry].with_more(more) if entry in seen else more

    for entry in entries if closely else ():
        look(entry, None, closely)
    if any(each.stopped for each in seen.values()):
        return tuple(seen.values())
    towards = frozenset[Place]()
    for a_spot in (A_FEW, MORE, None):
        for entry in entries:
            look(entry, a_spot, towards)
            missing = unwitnessed(library, pathway, tuple(seen.values()))
            if not any(place.step in by_arrows for place in missing):
                return tuple(seen.values())
        towards = frozenset([place for place in missing if place.step in by_arrows])
    return tuple(seen.values())


@lru_cache(maxsize=32)
def seen_from(
    library: Library, entry: PathwayId, a_spot: int | None, towards: frozenset[Place]
) -> Sighted:
    """Return what walks from an entry show, kept for the other pathways they come through."""
    return sighted(library, entry, a_spot, towards)


@lru_cache(maxsize=2)
def explored_from(library: Library, entry: PathwayId) -> Explored:
    """Return every state a walk from an entry can come to, kept while little else is asked."""
    return explore(library, entry)


def unwitnessed(
    library: Library, pathway: Pathway, looks: Sequence[Explored | Sighted]
) -> set[Place]:
    """Return the steps no walk came to yet, questions not yet put, and branches not yet informed.

    A branch is informed once some walk comes to it knowing each finding it names.
    """
    seen: dict[str, Seen] = {}
    for look in looks:
        for name, there in look.seen_in(pathway.id):
            seen[name] = there.with_more(seen[name]) if name in seen else there
    return {
        Place(pathway.id, name)
        for name, step in pathway.steps.items()
        if name not in seen or not _shown(library, pathway, step, seen[name])
    }


def _shown(library: Library, pathway: Pathway, step: Step, seen: Seen) -> bool:
    if isinstance(step, Question):
        return seen.asked
    if isinstance(step, Branch):
        return all(seen.ruled_out & field.every for field in _named(library, pathway, step))
    return True


def _named(library: Library, pathway: Pathway, branch: Branch) -> list[Field]:
    layout = layout_of(library)
    names = dict.fromkeys(name for row in branch.rows for name, _ in row.when.terms)
    return [layout.field(pathway.id, name) for name in names]
