"""A whole library with everything in it called as it is called now."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from chamberwise.engine.comparing.names.calling_places import place_called
from chamberwise.engine.comparing.names.calling_steps import step_called
from chamberwise.engine.comparing.names.calling_words import condition_called, words_called
from chamberwise.engine.comparing.names.named import Calls, Names, Sort, calls_of
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.local import Local
from chamberwise.engine.model.pathway import CaseTable, Pathway, WallChart
from chamberwise.engine.model.step import PathwayId


def in_new_names(old: Library, names: Names) -> Library:
    """Return a library under the names of now; texts, order and meaning stay as they are."""
    if not names:
        return old
    everywhere = {name: calls_of(old, names, name) for name in old.pathways}
    pathways = {
        name: _pathway(each, everywhere[name], everywhere) for name, each in old.pathways.items()
    }
    shared = words_called(old.shared, calls_of(old, names, None))
    return Library(shared, pathways, old.local and _local(old.local, everywhere))


def _pathway(pathway: Pathway, calls: Calls, everywhere: Mapping[PathwayId, Calls]) -> Pathway:
    steps = (step_called(each, calls, everywhere) for each in pathway.steps.values())
    chart = pathway.wall_chart
    return replace(
        pathway,
        start=calls.now(Sort.STEP, pathway.start),
        phases={calls.now(Sort.PHASE, name): said for name, said in pathway.phases.items()},
        steps={each.id: each for each in steps},
        words=words_called(pathway.words, calls),
        cases=pathway.cases and _cases(pathway.cases, calls),
        accepted=tuple(
            replace(each, at=place_called(each.at, pathway, calls)) for each in pathway.accepted
        ),
        wall_chart=chart
        and WallChart(
            chart.use_when, calls.each(Sort.STEP, chart.first), calls.each(Sort.STEP, chart.spine)
        ),
    )


def _cases(table: CaseTable, calls: Calls) -> CaseTable:
    def pairs(given: tuple[tuple[str, str], ...]) -> tuple[tuple[str, str], ...]:
        return tuple(
            (calls.now(Sort.FINDING, name), calls.now(Sort.VALUE, value, name))
            for name, value in given
        )

    return CaseTable(
        calls.each(Sort.FINDING, table.over),
        pairs(table.assume),
        pairs(table.asked_again),
        tuple(replace(each, when=condition_called(each.when, calls)) for each in table.impossible),
    )


def _local(local: Local, everywhere: Mapping[PathwayId, Calls]) -> Local:
    calls = everywhere.get(local.over, Calls())
    machine = local.machine
    if machine is not None:
        pages = {calls.now(Sort.ACT, act): page for act, page in machine.pages.items()}
        machine = replace(machine, pages=pages)
    return replace(
        local,
        phones={calls.now(Sort.ACT, act): each for act, each in local.phones.items()},
        products={calls.now(Sort.KIT, item): each for item, each in local.products.items()},
        machine=machine,
        reasons={calls.now(Sort.FINDING, name): each for name, each in local.reasons.items()},
        targets={_target(at, everywhere): each for at, each in local.targets.items()},
        switched_off={
            calls.now(Sort.RULE, rule): each for rule, each in local.switched_off.items()
        },
    )


def _target(at: str, everywhere: Mapping[PathwayId, Calls]) -> str:
    pathway, _slash, step = at.partition("/")
    return f"{pathway}/{everywhere.get(pathway, Calls()).now(Sort.STEP, step)}"
