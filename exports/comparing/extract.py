"""From a comparison to what is told of it. This file and its walk alone know the engine."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from datetime import date

from chamberwise.engine.cases.case import Case
from chamberwise.engine.comparing.behaviour import Alike, Apart, Undecided
from chamberwise.engine.comparing.case_changes import CaseChange
from chamberwise.engine.comparing.change import Change, Kind
from chamberwise.engine.comparing.compare import Comparison, Version
from chamberwise.engine.comparing.verdicts import Standing
from chamberwise.engine.comparing.words import ASKS_OTHERWISE
from chamberwise.engine.model.drill import DrillBook
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Outcome, PathwayId
from chamberwise.engine.stamp.copies import Copy
from chamberwise.exports.comparing.content import (
    CaseShown,
    ChangeShown,
    ComparisonShown,
    DrillShown,
    VerdictShown,
    Weight,
)
from chamberwise.exports.comparing.walk import walk_shown
from chamberwise.exports.control.content import day
from chamberwise.exports.printing.kind import Kind as SheetKind
from chamberwise.exports.proof.in_words import rule_in_words
from chamberwise.exports.record.naming import (
    act_title,
    duty_title,
    finding_title,
    pathway_title,
    step_name,
)
from chamberwise.exports.record.standing import marks
from chamberwise.exports.stamp.content import CopyShown, Worth

NO_BOOKS: Mapping[PathwayId, DrillBook] = {}
_LEADS = frozenset({Kind.TARGET, Kind.START})
_COUNTED = {
    Standing.BROKEN: ("is broken", "are broken"),
    Standing.UNPROVEN: ("is unproven", "are unproven"),
    Standing.DOES_NOT_ARISE: ("does not arise", "do not arise"),
    Standing.NO_RULE: ("is gone", "are gone"),
    Standing.HOLDS: ("holds", "hold"),
}


def comparison_shown(
    found: Comparison, today: date, books: Mapping[PathwayId, DrillBook] = NO_BOOKS
) -> ComparisonShown:
    """Return what is told of a comparison; `books` has the drills by pathway."""
    library, pathway = found.new.library, found.new.pathway
    words = library.words(pathway)
    bears_on = found.touched
    return ComparisonShown(
        pathway=pathway,
        title=pathway_title(library, pathway),
        was=_version(found.old, today),
        now=_version(found.new, today),
        dated=_dated(found.new),
        changes=tuple(_change(each, found) for each in found.changes),
        behaviour=_behaviour(found),
        walk=walk_shown(found) if isinstance(found.behaviour, Apart) else None,
        verdicts=tuple(
            VerdictShown(each.rule, each.title, str(each.was), str(each.now))
            for each in found.verdicts
            if each.is_changed
        ),
        standing=_standing(found),
        cases=tuple(_case(each, found) for each in found.cases),
        reprint=tuple(pathway_title(library, name) for name in bears_on.printed),
        take_down=tuple(map(_copy, bears_on.take_down)),
        rehearse=tuple(pathway_title(library, name) for name in bears_on.rehearsed),
        drills=tuple(
            DrillShown(name, each.id, each.title)
            for name in bears_on.rehearsed
            if name in books
            for each in books[name].scenarios
        ),
        acts=tuple(act_title(words, act) for act in bears_on.acts),
        cards=tuple(duty_title(words, who) for who in bears_on.duties),
    )


def _version(version: Version, today: date) -> str:
    library = version.library
    pathway, local = library.pathways[version.pathway], library.local_to(version.pathway)
    said = "".join(f", {mark}" for mark in marks(pathway, today))
    if local is None:
        return f"edition {pathway.edition}{said}"
    return f"edition {pathway.edition} over edition {local.base_edition}{said}, {local.unit}"


def _dated(version: Version) -> str:
    pathway = version.library.pathways[version.pathway]
    since = f" on {day(pathway.approved_on)}" if pathway.approved_on else ""
    stands = f"approved by {pathway.approved_by}{since}" if pathway.is_approved else "a draft"
    return f"edition {pathway.edition}, reviewed {day(pathway.reviewed)}, {stands}"


def _change(change: Change, found: Comparison) -> ChangeShown:
    old, new = found.old, found.new
    was, now = change.was, change.now
    if change.kind in _LEADS:
        was, now = _step(old, _before(was, found)), _step(new, now)
    elif change.why == ASKS_OTHERWISE:
        was, now = (_demand(version, change.at.name) for version in (old, new))
    at = change.at
    named = "/".join(each for each in (at.table, at.name) if each)
    return ChangeShown(
        Weight(change.rating),
        str(change.kind),
        at.pathway or "",
        f"{named}, {at.part}" if at.part else named,
        _where(change, found),
        was,
        now,
        change.why,
    )


def _demand(version: Version, rule: str) -> str:
    """Return in words what a rule asks for."""
    library, pathway = version.library, version.pathway
    return rule_in_words(library, pathway, library.words(pathway).rules[rule])


def _before(name: str, found: Comparison) -> str:
    """Return what a step was called in the old version."""
    renamed = found.renamed.get(found.old.pathway, {})
    return next((was for was, now in renamed.items() if now == name), name)


def _where(change: Change, found: Comparison) -> str:
    at = change.at
    part = f", {at.part}" if at.part else ""
    if at.table == "steps" and at.name:
        new = found.new.library.pathways[found.new.pathway]
        is_there = at.name in new.steps
        version, name = (found.new, at.name) if is_there else (found.old, _before(at.name, found))
        return f"At {_step(version, name)}{part}"
    owner = "" if at.pathway else "shared words, "
    named = f" `{at.name}`" if at.name else ""
    return f"In {owner}{at.table}{named}{part}"


def _step(version: Version, name: str) -> str:
    """Return a step in words with its name in the file."""
    steps = version.library.pathways[version.pathway].steps
    if not name or name not in steps:
        return name
    return f"“{step_name(version.library, Place(version.pathway, name))}” ({name})"


def _behaviour(found: Comparison) -> str:
    match found.behaviour:
        case Alike():
            return "On every walk the team is asked, told and warned of the same."
        case Apart():
            return "Walks differ. This is a shortest one that tells the versions apart:"
        case Undecided(pairs):
            return (
                f"Whether walks differ is not settled: none did in the first {pairs:,} pairs of "
                "states, and the search stopped there."
            )
    sides = " and the ".join(found.cannot_be_walked)
    return (
        f"The {sides} version cannot be walked, so neither walks nor rules nor cases were "
        "compared: `chamberwise check` says why."
    )


def _standing(found: Comparison) -> str:
    counts = Counter(each.now for each in found.verdicts)
    return ", ".join(
        f"{counts[each]} {_COUNTED[each][counts[each] > 1]}" for each in _COUNTED if counts[each]
    )


def _case(change: CaseChange, found: Comparison) -> CaseShown:
    version = found.new if change.now else found.old
    terms = (
        (finding_title(version.library.words(version.pathway), name), _label(version, name, value))
        for name, value in change.combinations[0]
    )
    example = "; ".join(f"{title}: {label}" for title, label in terms)
    was, now = _result(found.old.library, change.was), _result(found.new.library, change.now)
    return CaseShown(len(change.combinations), example, was, now)


def _label(version: Version, name: str, value: str) -> str:
    found = version.library.finding(version.pathway, name).value(value)
    return found.label if found else value


def _result(library: Library, case: Case | None) -> str:
    if case is None:
        return "not in the table"
    return "; ".join(_said(library, case)) or "nothing planned"


def _said(library: Library, case: Case) -> Iterator[str]:
    for column, texts in case.plan.items():
        yield f"{column}: {', then '.join(texts)}"
    if case.outcome is not None:
        step = library.step(case.outcome)
        yield f"ends: {step.title if isinstance(step, Outcome) else step.id}"
    if case.problem:
        yield f"open: {case.problem}"


def _copy(copy: Copy) -> CopyShown:
    kinds: Iterable[SheetKind] = SheetKind
    sheet = next((each.words for each in kinds if each == copy.sheet), copy.sheet)
    return CopyShown(
        copy.code,
        copy.title,
        sheet,
        copy.edition,
        copy.paper,
        copy.printed,
        copy.hangs,
        Worth.SUPERSEDED,
    )
