"""Changes at the head of a pathway and in what its sheets show: all but steps and words."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.wording.rule import TextKind
from chamberwise.engine.comparing.change import Change, Kind, Where
from chamberwise.engine.comparing.saying import EDITORIAL, PROCEDURAL, SAFETY, At, condition, told
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Acceptance, CaseTable, Impossible, Pathway, WallChart


def changes_of_head(old: Pathway, new: Pathway) -> Iterator[Change]:
    """Yield the changes of title, standing, entry, phases, table of cases and wall chart."""

    def at(table: str, name: str = "") -> At:
        return At(Where(new.id, table, name))

    yield from at("pathway").value(
        Kind.PATHWAY, PROCEDURAL, old.id, new.id, _("the pathway bears another name")
    )
    yield from at("title").text(Kind.TITLE, TextKind.ANSWER, old.title, new.title)
    yield from at("summary").text(
        Kind.SUMMARY, TextKind.REASON, old.summary, new.summary, EDITORIAL
    )
    yield from _standing(old, new)
    yield from at("start").value(
        Kind.START, SAFETY, old.start, new.start, _("walks begin at another step")
    )
    yield from at("reason for change").text(
        Kind.REASON, TextKind.REASON, old.reason_for_change, new.reason_for_change, EDITORIAL
    )
    for name in dict.fromkeys((*old.phases, *new.phases)):
        texts = old.phases.get(name, ""), new.phases.get(name, "")
        yield from at("phases", name).text(Kind.PHASE, TextKind.TITLE, *texts)
    yield from _cases(old.cases, new.cases, at("cases"))
    yield from _wall_chart(old.wall_chart, new.wall_chart, at("wall chart"))
    accepted = _("a problem that is accepted stays unseen from now on, or is seen again")
    yield from at("accepted").each(
        Kind.ACCEPTED, PROCEDURAL, map(_told, old.accepted), map(_told, new.accepted), accepted
    )


def _standing(old: Pathway, new: Pathway) -> Iterator[Change]:
    said = (
        ("edition", EDITORIAL, old.edition, new.edition, _("the edition is called otherwise")),
        ("status", PROCEDURAL, str(old.status), str(new.status), _("its standing changed")),
        ("authors", EDITORIAL, old.authors, new.authors, _("others wrote it")),
        (
            "approved by",
            PROCEDURAL,
            old.approved_by,
            new.approved_by,
            _("somebody else stands for it"),
        ),
        (
            "approved on",
            PROCEDURAL,
            old.approved_on,
            new.approved_on,
            _("it was approved another day"),
        ),
        ("reviewed", EDITORIAL, old.reviewed, new.reviewed, _("it was looked through another day")),
        (
            "review by",
            PROCEDURAL,
            old.review_by,
            new.review_by,
            _("its review is due another day"),
        ),
    )
    for table, rating, was, now, why in said:
        yield from At(Where(new.id, table)).value(Kind.STANDING, rating, was, now, why)


def _cases(old: CaseTable | None, new: CaseTable | None, at: At) -> Iterator[Change]:
    none = CaseTable(())
    before, after = old or none, new or none
    over = _("the table runs over other findings")
    yield from at.part("over").each(Kind.CASES, PROCEDURAL, before.over, after.over, over)
    taken = _("something else is taken for granted")
    for part, was, now in (
        ("assume", before.assume, after.assume),
        ("asked again", before.asked_again, after.asked_again),
    ):
        pairs = map(told, was), map(told, now)
        yield from at.part(part).each(Kind.CASES, PROCEDURAL, *pairs, taken)
    cannot_be = _("what is held to be impossible changed")
    declared = map(_impossible, before.impossible), map(_impossible, after.impossible)
    yield from at.part("impossible").each(Kind.CASES, PROCEDURAL, *declared, cannot_be)


def _impossible(declared: Impossible) -> str:
    return _("{when}, because {because}").format(
        when=condition(declared.when), because=declared.because
    )


def _wall_chart(old: WallChart | None, new: WallChart | None, at: At) -> Iterator[Change]:
    if old is None or new is None:
        was, now = old and old.use_when, new and new.use_when
        yield from at.value(Kind.WALL_CHART, PROCEDURAL, was, now, _("a wall chart came or went"))
        return
    use = at.part("use when")
    yield from use.text(Kind.WALL_CHART, TextKind.INSTRUCTION, old.use_when, new.use_when)
    first = _("what is done from memory, before anybody reads, changed")
    yield from at.part("first").value(Kind.WALL_CHART, SAFETY, old.first, new.first, first)
    line = _("the main line of the chart goes over other steps")
    yield from at.part("spine").value(Kind.WALL_CHART, PROCEDURAL, old.spine, new.spine, line)


def _told(accepted: Acceptance) -> str:
    return _("{check} at {at}: {reason}").format(
        check=accepted.check, at=accepted.at, reason=accepted.reason
    )
