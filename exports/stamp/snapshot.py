"""From a pathway to what the register keeps of it: every step it can come to, in words."""

from __future__ import annotations

import json
from collections.abc import Iterator
from hashlib import sha256

from chamberwise.engine.keys.digest import short_digest
from chamberwise.engine.language.languages import ENGLISH
from chamberwise.engine.language.speaking import speaking
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import (
    Action,
    Branch,
    Caution,
    Handover,
    Line,
    Outcome,
    PathwayId,
    Question,
    Step,
)
from chamberwise.engine.model.words import Words
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.engine.stamp.content import plain
from chamberwise.engine.stamp.copies import KeptStep, Snapshot
from chamberwise.exports.record.naming import (
    answer_label,
    duty_title,
    finding_title,
    step_name,
    value_labels,
)

UNIT = {
    "phones": "phones",
    "places": "places",
    "products": "products",
    "machine": "machine",
    "choices": "reasons",
    "time targets": "targets",
    "switched off": "switched_off",
}
"""Keys of a unit's sheet, by the name of what is made of them; the rest stands in the steps."""
REST = 12
ON = "it"


def snapshot(library: Library, pathway: PathwayId) -> Snapshot:
    """Return what a pathway's sheets say, handovers followed.

    The register keeps it, so what the program adds is in English whoever speaks.
    """
    with speaking(ENGLISH.code):
        return _snapshot(library, pathway)


def _snapshot(library: Library, pathway: PathwayId) -> Snapshot:
    about = library.pathways[pathway]
    places = (
        Place(name, step)
        for name in reached_by_handover(library, pathway)
        for step in library.pathways[name].steps
    )
    steps = {f"{place.pathway}/{place.step}": _step(library, place) for place in places}
    source = library.translation.sources.get(pathway, "") if library.translation else ""
    return Snapshot(about.edition, approval(about), steps, source, _unit(library, pathway))


def _unit(library: Library, pathway: PathwayId) -> dict[str, str]:
    """Return a digest of what the unit's sheet says under each of its keys."""
    local = library.local_to(pathway)
    said = {key: getattr(local, name) for key, name in UNIT.items()} if local else {}
    return {key: short_digest(plain(each)) for key, each in said.items() if each}


def approval(pathway: Pathway) -> str:
    """Return in words who stands for a pathway."""
    if pathway.is_approved:
        return f"approved by {pathway.approved_by}"
    return "draft, approved by nobody" if pathway.status == "draft" else str(pathway.status)


def _step(library: Library, place: Place) -> KeptStep:
    step, words = library.step(place), library.words(place.pathway)
    ways = ((how, f"{place.pathway}/{to}") for how, to in _ways(step, words))
    rest = sha256(json.dumps(plain(step), ensure_ascii=False).encode()).hexdigest()
    return KeptStep(
        step_name(library, place),
        tuple(ways),
        tuple(_line(line, words) for line in _lines(step)),
        tuple(_caution(each) for each in step.cautions),
        rest[:REST],
    )


def _lines(step: Step) -> tuple[Line, ...]:
    match step:
        case Action():
            return step.lines
        case Outcome():
            return step.owed
        case _:
            return ()


def _line(line: Line, words: Words) -> str:
    when = f"{line.when}: " if line.when else ""
    said = "says: " if line.said_aloud else ""
    return f"{when}{duty_title(words, line.who)}: {said}{line.text}"


def _caution(caution: Caution) -> str:
    return f"{caution.signal.upper()}: {caution.harm} {caution.instead}"


def _ways(step: Step, words: Words) -> Iterator[tuple[str, str]]:
    match step:
        case Question():
            finding = words.findings[step.ask]
            for answer in step.answers:
                yield f"the answer “{answer_label(finding, answer)}”", answer.go_to
        case Action():
            yield ON, step.go_to
        case Branch():
            yield from _rows(step, words)
        case Handover():
            for outcome, to in step.on_return:
                yield f"coming back by `{outcome}`", to
    if step.bound is not None:
        yield f"after {step.bound.at_most} times it", step.bound.after_that


def _rows(step: Branch, words: Words) -> Iterator[tuple[str, str]]:
    for row in step.rows:
        yield f"“{_condition(row.when, words)}”", row.go_to
    if step.otherwise:
        yield "“otherwise”", step.otherwise
    if step.not_known:
        yield "“not known”", step.not_known


def _condition(when: Condition, words: Words) -> str:
    terms = []
    for name, values in when.terms:
        finding = words.findings.get(name)
        meant = value_labels(finding, values) if finding else " or ".join(values)
        terms.append(f"{finding_title(words, name)}: {meant}")
    return ", ".join(terms)
