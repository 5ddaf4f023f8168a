"""Names that changed and nothing else with them, told one by one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TypeAlias

from chamberwise.engine.comparing.change import Change, Kind, Where
from chamberwise.engine.comparing.names.named import TABLES, Named, Names, Sort
from chamberwise.engine.comparing.saying import EDITORIAL
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import PathwayId, StepId

Renames: TypeAlias = Mapping[StepId, StepId]
"""From the name of a step to the name it bears now."""

ONLY_THE_NAME = N_("it is the same; only its name in the file changed")


def of_pathway(names: Names, old: PathwayId, new: PathwayId) -> Iterator[Change]:
    """Yield what a pathway calls otherwise now; `old` and `new` are its own names."""
    for each, now in names.items():
        if each.pathway == old:
            yield _change(each, now, names, new)


def of_shared(names: Names) -> Iterator[Change]:
    """Yield what the shared words call otherwise now."""
    for each, now in names.items():
        if each.pathway is None:
            yield _change(each, now, names, None)


def of_library(renamed: Mapping[PathwayId, PathwayId]) -> Iterator[Change]:
    """Yield what pathways are called otherwise now."""
    for was, now in renamed.items():
        yield Change(Kind.RENAMED, EDITORIAL, Where(now, "pathway"), was, now, _(ONLY_THE_NAME))


def steps_renamed(names: Names, pathway: PathwayId) -> Renames:
    """Return the steps of a pathway that bear another name now."""
    return {
        each.name: now
        for each, now in names.items()
        if each.pathway == pathway and each.sort is Sort.STEP
    }


def _change(named: Named, now: str, names: Names, pathway: PathwayId | None) -> Change:
    at = _where(named, now, names, pathway)
    return Change(Kind.RENAMED, EDITORIAL, at, named.name, now, _(ONLY_THE_NAME))


def _where(named: Named, now: str, names: Names, pathway: PathwayId | None) -> Where:
    if named.sort is Sort.VALUE:
        finding = names.get(Named(named.pathway, Sort.FINDING, named.of), named.of)
        return Where(pathway, "findings", finding, _("value `{name}`").format(name=now))
    if named.sort is Sort.ANSWER:
        step = names.get(Named(named.pathway, Sort.STEP, named.of), named.of)
        return Where(pathway, "steps", step, _("answer `{answer}`").format(answer=now))
    if named.sort in (Sort.STEP, Sort.PHASE):
        return Where(pathway, f"{named.sort}s", now)
    return Where(pathway, TABLES[named.sort], now)
