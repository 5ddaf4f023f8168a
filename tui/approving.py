"""What stands against approving a pathway or a unit's sheet over it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from pathlib import Path

from chamberwise.engine.approval.choosing import open_choices
from chamberwise.engine.approval.people import is_one_of
from chamberwise.engine.checks.before_proof import check_before_proof
from chamberwise.engine.checks.evidence import edited_since_approval, not_approved
from chamberwise.engine.checks.run import check_files
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.diagnostics.text import place
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway, Status
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.verdict import Holds, Violated
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.reading.saying import one_or
from chamberwise.exports.scaffold.render import SUMMARY

_TO_BE_SETTLED = (edited_since_approval.CODE.slug, not_approved.CODE.slug)


def reasons_against(
    loaded: Loaded, pathway: PathwayId, files: Sequence[str], by: str, on: date
) -> list[str]:
    """Return every reason against an approval, each with what to do; none where it may stand."""
    own = loaded.library.pathways[pathway]
    local = loaded.library.local_to(pathway)
    covers = local.covers if local else (pathway,)
    found = [*_of_head(own, by, on)]
    found += _of_choices(loaded, pathway)
    shown = dict.fromkeys((*files, *(loaded.file_of[name] for name in covers)))
    found += [_told(each) for each in check_files(loaded, shown, on) if _weighs(each)]
    for name in covers:
        found += _unproved(loaded, name, on)
    return list(dict.fromkeys(found))


def _of_head(pathway: Pathway, by: str, on: date) -> Iterator[str]:
    if is_one_of(by, pathway.authors):
        yield _("{by} is among the authors: let somebody else approve it.").format(by=by)
    if "." in pathway.edition:
        whole = int(pathway.edition.split(".")[0]) + 1
        yield _("edition {edition} is a draft's: write `edition: {whole}`.").format(
            edition=pathway.edition, whole=whole
        )
    if pathway.summary == SUMMARY:
        yield _("its `summary` is still what `new` wrote: say for whom and when it is used.")
    if pathway.status in (Status.SUPERSEDED, Status.WITHDRAWN):
        yield _("its status is `{status}`: what is out of use is not approved.").format(
            status=pathway.status
        )
    if pathway.reviewed > on:
        yield _("`reviewed` is {reviewed}, which is still to come: write the day that was.").format(
            reviewed=pathway.reviewed.isoformat()
        )
    if pathway.review_by < on:
        yield _("its review was due by {review_by}: review it first.").format(
            review_by=pathway.review_by.isoformat()
        )


def _of_choices(loaded: Loaded, pathway: PathwayId) -> Iterator[str]:
    """Yield each choice that is open, and where a pathway without a unit's sheet has it made."""
    still_open = open_choices(loaded.library, pathway)
    for each in still_open:
        yield _("`{id}` is not chosen ({title}): choose {positions}.").format(
            id=each.id, title=each.title, positions=one_or(value.id for value in each.values)
        )
    if still_open and loaded.library.local_to(pathway) is None:
        yield _(
            "a unit makes its choices in a sheet over the pathway, and approves that: "
            "`chamberwise new our-unit --over {over}`."
        ).format(over=_as_typed(loaded.file_of[pathway], pathway))


def _as_typed(file: str, pathway: PathwayId) -> str:
    """Return a pathway as it is named where one stands: its file, or its name in the library."""
    return pathway if Path(file).is_absolute() else file


def _weighs(problem: Problem) -> bool:
    return problem.severity is Severity.ERROR and problem.code not in _TO_BE_SETTLED


def _told(problem: Problem) -> str:
    return f"{place(problem.file, problem.span)}: {problem.message}. {problem.advice}"


def _unproved(loaded: Loaded, pathway: PathwayId, on: date) -> Iterator[str]:
    for problem in check_before_proof(loaded, pathway, on):
        yield _told(problem)
    for verdict in prove(loaded.library, pathway).verdicts:
        if not isinstance(verdict, Holds):
            told = _("a safety rule is unproven in `{pathway}`: {title}. `prove` shows how.")
            if isinstance(verdict, Violated):
                told = _("a safety rule is broken in `{pathway}`: {title}. `prove` shows how.")
            yield told.format(pathway=pathway, title=verdict.rule.title)
