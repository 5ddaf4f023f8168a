"""What cases hang on, as plain rows and as notes with marks."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from chamberwise.engine.cases.grouping import CaseGroup, Once
from chamberwise.engine.cases.hang import Granted, Hang, Taken
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.words import Finding
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.exports.language.joining import either


@dataclass(frozen=True, slots=True)
class OtherRow:
    """Another value, what it changes, and the finding and value that must be otherwise as well."""

    value: str
    changes: tuple[str, ...]
    once: tuple[str, str] | None


@dataclass(frozen=True, slots=True)
class HangRow:
    """Something taken for granted, by names, and each other value that changes the case."""

    kind: str
    finding: str
    value: str
    others: tuple[OtherRow, ...]


@dataclass(frozen=True, slots=True)
class Note:
    """A mark and what stands behind it."""

    mark: str
    text: str


def hang_row(hang: Hang) -> HangRow:
    """Return a hang by names."""
    others = (
        OtherRow(each.value, tuple(str(change) for change in each.changes), each.once)
        for each in hang.others
    )
    return HangRow(str(hang.taken.kind), hang.taken.finding, hang.taken.value, tuple(others))


def notes(
    library: Library, pathway: PathwayId, groups: Iterable[CaseGroup]
) -> Mapping[Taken, Note]:
    """Return a note for each thing some case hangs on, choices first, then in the table's order."""
    taken: dict[Taken, list[Once]] = {}
    for group in groups:
        for each, once in group.hangs_on.items():
            taken.setdefault(each, []).append(once)
    table = library.pathways[pathway].cases
    named = [*(name for name, _rest in (*table.assume, *table.asked_again))] if table else []

    def place(each: Taken) -> tuple[int, int]:
        where = named.index(each.finding) if each.finding in named else len(named)
        return [Granted.CHOICE, Granted.ASSUMED, Granted.ASKED_AGAIN].index(each.kind), where

    return {
        each: Note(
            _mark(number), _text(library, pathway, each) + _once(library, pathway, taken[each])
        )
        for number, each in enumerate(sorted(taken, key=place))
    }


def _mark(number: int) -> str:
    more, letter = divmod(number, 26)
    return (_mark(more - 1) if more else "") + chr(ord("a") + letter)


def _text(library: Library, pathway: PathwayId, taken: Taken) -> str:
    finding = _finding(library, pathway, taken.finding)
    value = finding.value(taken.value)
    label = value.label if value else taken.value
    if taken.kind is Granted.ASSUMED:
        return f"{finding.title}: {label}"
    if taken.kind is Granted.ASKED_AGAIN:
        return _("{title}, when asked again: {label}").format(title=finding.title, label=label)
    suggested = finding.choice.suggested if finding.choice else None
    said = (
        _("suggested: {label}").format(label=label)
        if suggested == taken.value
        else _("taken: {label}").format(label=label)
    )
    return _("Local choice, not set: {title} ({said})").format(title=finding.title, said=said)


def _once(library: Library, pathway: PathwayId, found: list[Once]) -> str:
    """Return what has to be otherwise as well, wherever it is so."""
    if not all(found):
        return ""
    labels = []
    for name, value in dict.fromkeys(each for once in found for each in once):
        finding = _finding(library, pathway, name)
        label = finding.value(value)
        labels.append(f"{finding.title}: {label.label if label else value}")
    return _("; matters only with {labels}").format(labels=either(labels))


def _finding(library: Library, pathway: PathwayId, name: str) -> Finding:
    """Return a finding as the pathway names it, or as the first does that it hands over to."""
    for each in reached_by_handover(library, pathway):
        found = library.words(each).findings.get(name)
        if found is not None:
            return found
    raise KeyError(name)
