"""From a comparison to what is told of it. This file and its walk alone know the engine."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from datetime import date

from chamberwise.engine.cases.case import Case
from chamberwise.engine.comparing.behaviour import Alike, Apart, Undecided
from chamberwise.engine.comparing.case_changes import CaseChange
from chamberwise.engine.comparing.change import Change, Kind
from chamberwise.engine.comparing.compare import Comparison, Version
from chamberwise.engine.comparing.names.renamed import steps_renamed
from chamberwise.engine.comparing.verdicts import Standing
from chamberwise.engine.comparing.words import ASKS_OTHERWISE
from chamberwise.engine.language.numbers import thousands
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.drill import DrillBook
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Outcome, PathwayId
from chamberwise.engine.model.words import Finding
from chamberwise.engine.stamp.copies import Copy
from chamberwise.exports.comparing.content import (
    CaseShown,
    ChangeShown,
    ComparisonShown,
    DrillShown,
    MendShown,
    VerdictShown,
    Weight,
)
from chamberwise.exports.comparing.walk import walk_shown
from chamberwise.exports.control.content import day
from chamberwise.exports.language.joining import one_after_another
from chamberwise.exports.language.values import told
from chamberwise.exports.printing.sheet_name import sheet_told
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
_CANNOT_BE_WALKED = {
    "old": N_(
        "The old version cannot be walked, so neither walks nor rules nor cases were "
        "compared: `chamberwise check` says why."
    ),
    "new": N_(
        "The new version cannot be walked, so neither walks nor rules nor cases were "
        "compared: `chamberwise check` says why."
    ),
}
_LEADS = frozenset({Kind.TARGET, Kind.START})
_COUNTED = {
    Standing.BROKEN: (N_("is broken"), N_("are broken")),
    Standing.UNPROVEN: (N_("is unproven"), N_("are unproven")),
    Standing.DOES_NOT_ARISE: (N_("does not arise"), N_("do not arise")),
    Standing.NO_RULE: (N_("is gone"), N_("are gone")),
    Standing.HOLDS: (N_("holds"), N_("hold")),
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
            VerdictShown(each.rule, each.title, told(each.was), told(each.now))
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
        mend=tuple(MendShown(each.file, each.line, each.was, each.now) for each in bears_on.mend),
    )


def _version(version: Version, today: date) -> str:
    library = version.library
    pathway, local = library.pathways[version.pathway], library.local_to(version.pathway)
    said = "".join(f", {mark}" for mark in marks(pathway, today))
    if local is None:
        return _("edition {edition}{said}").format(edition=pathway.edition, said=said)
    return _("edition {edition} over edition {base_edition}{said}, {unit}").format(
        edition=pathway.edition, base_edition=local.base_edition, said=said, unit=local.unit
    )


def _dated(version: Version) -> str:
    pathway = version.library.pathways[version.pathway]
    stands = _("a draft")
    if pathway.is_approved and pathway.approved_on:
        stands = _("approved by {who} on {day}").format(
            who=pathway.approved_by, day=day(pathway.approved_on)
        )
    elif pathway.is_approved:
        stands = _("approved by {who}").format(who=pathway.approved_by)
    return _("edition {edition}, reviewed {reviewed}, {stands}").format(
        edition=pathway.edition, reviewed=day(pathway.reviewed), stands=stands
    )


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
        told(change.kind),
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
    renamed = steps_renamed(found.names, found.old.pathway)
    return next((was for was, now in renamed.items() if now == name), name)


def _where(change: Change, found: Comparison) -> str:
    at = change.at
    part = f", {at.part}" if at.part else ""
    if at.table == "steps" and at.name:
        new = found.new.library.pathways[found.new.pathway]
        is_there = at.name in new.steps
        version, name = (found.new, at.name) if is_there else (found.old, _before(at.name, found))
        return _("At {step}{part}").format(step=_step(version, name), part=part)
    named = f" `{at.name}`" if at.name else ""
    where = f"{at.table}{named}{part}"
    return (_("In {where}") if at.pathway else _("In shared words, {where}")).format(where=where)


def _step(version: Version, name: str) -> str:
    """Return a step in words with its name in the file."""
    steps = version.library.pathways[version.pathway].steps
    if not name or name not in steps:
        return name
    return f"“{step_name(version.library, Place(version.pathway, name))}” ({name})"


def _behaviour(found: Comparison) -> str:
    match found.behaviour:
        case Alike():
            return _("On every walk the team is asked, told and warned of the same.")
        case Apart():
            return _("Walks differ. This is a shortest one that tells the versions apart:")
        case Undecided(pairs):
            return _(
                "Whether walks differ is not settled: none did in the first {pairs} pairs of "
                "states, and the search stopped there."
            ).format(pairs=thousands(pairs))
    if len(found.cannot_be_walked) > 1:
        return _(
            "The old and the new version cannot be walked, so neither walks nor rules nor cases "
            "were compared: `chamberwise check` says why."
        )
    return _(_CANNOT_BE_WALKED[found.cannot_be_walked[0]])


def _standing(found: Comparison) -> str:
    counts = Counter(each.now for each in found.verdicts)
    return ", ".join(
        f"{counts[each]} {_(_COUNTED[each][counts[each] > 1])}" for each in _COUNTED if counts[each]
    )


def _case(change: CaseChange, found: Comparison) -> CaseShown:
    library, pathway = found.before, found.old.pathway
    if change.now:
        library, pathway = found.new.library, found.new.pathway
    terms = (
        (finding_title(library.words(pathway), name), _label(library.finding(pathway, name), value))
        for name, value in change.combinations[0]
    )
    example = "; ".join(f"{title}: {label}" for title, label in terms)
    was, now = _result(found.before, change.was), _result(found.new.library, change.now)
    return CaseShown(len(change.combinations), example, was, now)


def _label(finding: Finding, value: str) -> str:
    found = finding.value(value)
    return found.label if found else value


def _result(library: Library, case: Case | None) -> str:
    if case is None:
        return _("not in the table")
    return "; ".join(_said(library, case)) or _("nothing planned")


def _said(library: Library, case: Case) -> Iterator[str]:
    for column, texts in case.plan.items():
        yield f"{column}: {one_after_another(texts)}"
    if case.outcome is not None:
        step = library.step(case.outcome)
        yield _("ends: {value}").format(value=step.title if isinstance(step, Outcome) else step.id)
    if case.problem:
        yield _("open: {problem}").format(problem=case.problem)


def _copy(copy: Copy) -> CopyShown:
    return CopyShown(
        copy.code,
        copy.title,
        sheet_told(copy.sheet),
        copy.edition,
        copy.paper,
        copy.printed,
        copy.hangs,
        Worth.SUPERSEDED,
    )
