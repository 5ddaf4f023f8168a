"""From a pathway and those it hands over to, to the kit they need."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.chart.numbers import step_numbers
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.local import Local
from chamberwise.engine.model.step import Action, PathwayId
from chamberwise.engine.model.words import KitItem
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.exports.control.extract import place_told
from chamberwise.exports.kit.content import KitList, KitRow, Use
from chamberwise.exports.script.headlines import headline
from chamberwise.exports.script.main_line import first_actions, main_line


def kit_list(library: Library, name: PathwayId) -> KitList:
    """Return every item that is needed, in the order in which it comes up."""
    items: dict[str, KitItem] = {}
    uses: dict[str, list[Use]] = {}
    for pathway in reached_by_handover(library, name):
        kit = library.words(pathway).kit
        for step in _actions(library, pathway):
            for need in step.needs:
                items.setdefault(need, kit.get(need) or KitItem(need, need))
                uses.setdefault(need, []).append(_use(library, name, pathway, step))
    at_once = set(_at_once(library, name))
    rows = [
        _row(library.local_to(name), item, tuple(uses[need]), is_at_once=need in at_once)
        for need, item in items.items()
    ]
    local = library.local_to(name)
    return KitList(
        library.pathways[name].title, tuple(rows), local is not None, _machine(library, name)
    )


def _row(local: Local | None, item: KitItem, uses: tuple[Use, ...], *, is_at_once: bool) -> KitRow:
    own = local.products.get(item.id) if local else None
    product, stock = (own.product, own.stock) if own else ("", "")
    place = place_told(local, item.id)
    return KitRow(item.title, item.amount, item.why, uses, is_at_once, product, place, stock)


def _machine(library: Library, name: PathwayId) -> str:
    """Return the unit's machine, and by act the name of the page that is meant."""
    local, acts = library.local_to(name), library.words(name).acts
    if local is None or local.machine is None:
        return ""
    pages = [f"{acts[act].title}: {page}" for act, page in local.machine.pages.items()]
    return "; ".join([local.machine.title, *pages])


def _actions(library: Library, pathway: PathwayId) -> Iterator[Action]:
    for step in library.pathways[pathway].steps.values():
        if isinstance(step, Action):
            yield step


def _use(library: Library, asked: PathwayId, pathway: PathwayId, step: Action) -> Use:
    other = library.pathways[pathway].title if pathway != asked else ""
    number = step_numbers(library.pathways[pathway])[step.id]
    return Use(f"{pathway}/{step.id}", headline(library, step), number, other)


def _at_once(library: Library, name: PathwayId) -> Iterator[str]:
    """Yield what the first actions need, and every action of the phase they begin in."""
    pathway = library.pathways[name]
    first = first_actions(pathway, main_line(pathway))
    phase = first[0].phase if first else next(iter(pathway.phases), "")
    for step in (*first, *_actions(library, name)):
        if step.phase == phase or step in first:
            yield from step.needs
