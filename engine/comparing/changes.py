"""Every change between two versions of a pathway, in document order."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from chamberwise.engine.comparing.change import Change, Kind, Where, gravest
from chamberwise.engine.comparing.head import changes_of_head
from chamberwise.engine.comparing.names.named import Names
from chamberwise.engine.comparing.names.renamed import of_pathway, of_shared
from chamberwise.engine.comparing.names.reused import reused_in_pathway, reused_words
from chamberwise.engine.comparing.saying import EDITORIAL, SAFETY, At, told
from chamberwise.engine.comparing.steps import LeadsAround, changes_of_step, told_step, weight
from chamberwise.engine.comparing.words import changes_of_words
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import (
    Action,
    PathwayId,
    Step,
    StepId,
)


def by_gravity(found: Iterable[Change]) -> tuple[Change, ...]:
    """Return changes with the gravest first, each rating in document order."""
    return tuple(sorted(found, key=lambda change: change.rating.rank))


def changes_of_pathway(old: Pathway, new: Pathway, names: Names) -> Iterator[Change]:
    """Yield every change of a pathway of which all in the old is called by its new name.

    `names` has what bore another name.
    """
    yield from changes_of_head(old, new)
    yield from changes_of_words(old.words, new.words, new.id)
    yield from reused_words(old.words, new.words, new.id)
    yield from reused_in_pathway(old, new)
    yield from of_pathway(names, old.id, new.id)
    for name, step in old.steps.items():
        if name not in new.steps:
            yield _alone(step, new, gone=True)
    around = _around(old, new)
    for name, step in new.steps.items():
        if name not in old.steps:
            yield _alone(step, new, gone=False)
        elif old.steps[name] != step:
            yield from changes_of_step(
                old.steps[name], step, At(Where(new.id, "steps", name)), around
            )
    yield from _order(old, new)


def _alone(step: Step, pathway: Pathway, *, gone: bool) -> Change:
    rating, why = weight(step)
    said = told_step(step)
    was, now = (said, "") if gone else ("", said)
    where = Where(pathway.id, "steps", step.id)
    came = _("a step was removed: {why}") if gone else _("a step was added: {why}")
    return Change(Kind.STEP, rating, where, was, now, came.format(why=why))


def _order(old: Pathway, new: Pathway) -> Iterator[Change]:
    before = [name for name in old.steps if name in new.steps]
    after = [name for name in new.steps if name in old.steps]
    if before != after:
        moved = tuple(was for was, now in zip(before, after, strict=True) if was != now)
        where = Where(new.id, "steps")
        why = _("steps stand elsewhere in the file; no arrow changed by it")
        yield Change(Kind.ORDER, EDITORIAL, where, told(moved), "", why)


def _around(old: Pathway, new: Pathway) -> LeadsAround:
    """Return whether an arrow leads where it did, over light steps that came or went."""
    came = {name: step for name, step in new.steps.items() if name not in old.steps}
    went = {name: step for name, step in old.steps.items() if name not in new.steps}

    def leads_around(was: StepId, now: StepId) -> bool:
        return bool({was, *_on_from(was, went)} & {now, *_on_from(now, came)})

    return leads_around


def _on_from(name: StepId, steps: Mapping[StepId, Step]) -> Iterator[StepId]:
    """Yield where steps of little weight lead on to, one after the other."""
    met: set[StepId] = set()
    while name in steps and name not in met:
        met.add(name)
        step = steps[name]
        if not isinstance(step, Action) or weight(step)[0] is SAFETY:
            return
        name = step.go_to
        yield name


def changes_of_shared(
    old: Library, new: Library, used: frozenset[str] | None, names: Names
) -> Iterator[Change]:
    """Yield the changes of shared words; `used` names those that matter, none for all of them.

    Safety rules bind every pathway and always matter. `names` has what bore another name.
    """
    found = (
        *changes_of_words(old.shared, new.shared, None),
        *reused_words(old.shared, new.shared, None),
        *of_shared(names),
    )
    for change in found:
        if used is None or change.at.table == "rules" or change.at.name in used:
            yield change


def changes_over_there(
    old: Library, new: Library, reached: Iterable[PathwayId], names: Names
) -> Iterator[Change]:
    """Yield one change for each pathway handed over to that changed, as grave as its gravest."""
    for name in reached:
        if name not in old.pathways:
            continue
        found = [*changes_of_pathway(old.pathways[name], new.pathways[name], names)]
        if found:
            why = ngettext(
                "a pathway that is handed over to changed in {places} place; compare that one too",
                "a pathway that is handed over to changed in {places} places; compare that one too",
                len(found),
            ).format(places=len(found))
            editions = old.pathways[name].edition, new.pathways[name].edition
            was, now = (
                _("{name}, edition {edition}").format(name=name, edition=edition)
                for edition in editions
            )
            rating = gravest(change.rating for change in found)
            yield Change(Kind.HANDOVER, rating, Where(name, "pathway"), was, now, why)
