"""Which things bear another name now and are the same: by what they say, then by where they are

used. Only names that are gone and names that are new are put together, each once: a name that
both versions have is never taken for a rename, whatever became of it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from chamberwise.engine.comparing.names.calling import in_new_names
from chamberwise.engine.comparing.names.named import TABLES, Named, Names, Sort
from chamberwise.engine.comparing.names.same_step import same_steps
from chamberwise.engine.comparing.names.same_word import same_values, same_words
from chamberwise.engine.comparing.names.uses import Uses, uses
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import PathwayId, Question
from chamberwise.engine.model.words import Words


def told_again(old: Library, new: Library, pairs: Mapping[PathwayId, PathwayId]) -> Names:
    """Return the things that bear another name now; `pairs` has the pathways to look at.

    Found names are put into the old library before the next are looked for: what speaks of them
    is alike only then.
    """
    names: dict[Named, str] = {}
    while True:
        before = in_new_names(old, names)
        found = {_as_of_old(each, names): now for each, now in _next(before, new, pairs)}
        if not found:
            return {each: now for each, now in names.items() if each.name != now}
        names |= found


def _as_of_old(named: Named, names: Names) -> Named:
    """Return a thing whose finding or step is called as it was."""
    owner = {Sort.VALUE: Sort.FINDING, Sort.ANSWER: Sort.STEP}.get(named.sort)
    if owner is None:
        return named
    was = next(
        (
            each.name
            for each, now in names.items()
            if (each.pathway, each.sort, now) == (named.pathway, owner, named.of)
        ),
        named.of,
    )
    return Named(named.pathway, named.sort, named.name, was)


def _next(
    before: Library, new: Library, pairs: Mapping[PathwayId, PathwayId]
) -> Iterator[tuple[Named, str]]:
    """Yield the renamed things of the first sort that has any, but for steps: those last."""
    changed = {was: now for was, now in pairs.items() if before.pathways[was] != new.pathways[now]}
    if before.shared == new.shared and not changed:
        return
    used = uses(before, pairs), uses(new, {now: now for now in pairs.values()})
    both = before, new
    found = [*_words(before.shared, new.shared, None, used, both)]
    for was, now in changed.items():
        found += _words(before.pathways[was].words, new.pathways[now].words, was, used, both)
        found += _of_frame(before.pathways[was], new.pathways[now])
    yield from found
    if not found:
        for was, now in changed.items():
            for step, called in same_steps(before.pathways[was], new.pathways[now]).items():
                yield Named(was, Sort.STEP, step), called


def _words(
    old: Words,
    new: Words,
    pathway: PathwayId | None,
    used: tuple[Uses, Uses],
    libraries: tuple[Library, Library],
) -> Iterator[tuple[Named, str]]:
    for sort, table in TABLES.items():
        before, after = getattr(old, table), getattr(new, table)
        for name, now in same_words(sort, before, after, used).items():
            if not _is_taken(sort, name, now, libraries):
                yield Named(pathway, sort, name), now
    for name, finding in old.findings.items():
        if name in new.findings:
            for value, now in same_values(finding, new.findings[name]).items():
                yield Named(pathway, Sort.VALUE, value, name), now


def _is_taken(sort: Sort, was: str, now: str, libraries: tuple[Library, Library]) -> bool:
    """Whether the old name is left to something else, or the new one came from it."""
    before, after = (
        {name for words in _all_words(each) for name in getattr(words, TABLES[sort])}
        for each in libraries
    )
    return now in before or was in after


def _all_words(library: Library) -> Iterator[Words]:
    yield library.shared
    yield from (each.words for each in library.pathways.values())


def _of_frame(old: Pathway, new: Pathway) -> Iterator[tuple[Named, str]]:
    phases = _by_content(old.phases.items(), new.phases.items())
    for name, now in phases.items():
        yield Named(old.id, Sort.PHASE, name), now
    for name, step in old.steps.items():
        twin = new.steps.get(name)
        if isinstance(step, Question) and isinstance(twin, Question):
            sides = (((each.id, frozenset(each.means)) for each in q.answers) for q in (step, twin))
            for answer, now in _by_content(*sides).items():
                yield Named(old.id, Sort.ANSWER, answer, name), now


def _by_content(
    old: Iterable[tuple[str, object]], new: Iterable[tuple[str, object]]
) -> dict[str, str]:
    """Return names that are gone with names that are new and say the same, where one alone does."""
    before, after = dict(old), dict(new)
    gone = [name for name in before if name not in after]
    come = [name for name in after if name not in before]
    found = {}
    for name in gone:
        twins = [each for each in come if after[each] == before[name]]
        rivals = [each for each in gone if before[each] == before[name]]
        if len(twins) == len(rivals) == 1:
            found[name] = twins[0]
    return found
