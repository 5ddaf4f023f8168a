"""Faults of cautions, calls for help, sources, approval, review dates and acceptances."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.model.pathway import Pathway, Status
from chamberwise.engine.model.step import Action, Outcome, Step

from tests.engine.checks.planting.editing import Fault, Source

ACCEPTED = "{check: %s, at: steps / nowhere, reason: Planted.}"


def faults(source: Source) -> Iterator[Fault]:
    """Yield every fault of evidence."""
    pathway = source.pathway
    if pathway:
        yield from _late_cautions(source, pathway)
        yield from _no_help(source, pathway)
        for step in pathway.steps.values():
            yield from _of_sources(source, step)
        yield from _of_approval(source, pathway)
        yield from _of_dates(source)
        yield from _of_acceptances(source, pathway)
    yield from _of_findings(source)
    yield from _of_kit(source)


def _late_cautions(source: Source, pathway: Pathway) -> Iterator[Fault]:
    """Move each caution on an act, where it is the only one, to an outcome without cautions."""
    cautions = [each for step in pathway.steps.values() for each in step.cautions]
    ends = [step.id for step in pathway.steps.values() if _is_bare_end(step)]
    for step in pathway.steps.values():
        for place, caution in enumerate(step.cautions):
            alone = sum(each.guards == caution.guards for each in cautions) == 1
            if not (caution.guards and alone and ends):
                continue
            at: Pointer = ("steps", step.id, "cautions")
            cut = source.cut(*at, place)
            if len(step.cautions) == 1:
                cut = source.cut(*at)
            end = ends[-1]
            new = f"{{danger: A harm., instead: Stop., guards: {caution.guards}}}"
            moved = f"cautions:\n      - {new}"
            text = source.spliced(cut, source.before(moved, "steps", end, "outcome"))
            yield Fault("late caution", text, "caution-too-late", _line_of(text, "A harm."))


def _is_bare_end(step: Step) -> bool:
    return isinstance(step, Outcome) and not step.cautions


def _line_of(text: str, words: str) -> int:
    return text[: text.index(words)].count("\n") + 1


def _no_help(source: Source, pathway: Pathway) -> Iterator[Fault]:
    acts = source.loaded.library.words(pathway.id).acts
    cuts = [
        source.cut("steps", step.id, "do", place, "act")
        for step in pathway.steps.values()
        if isinstance(step, Action)
        for place, line in enumerate(step.lines)
        if line.act and acts[line.act].calls_for_help
    ]
    near = _two_steps_on(pathway)
    if cuts and near:
        text = source.spliced(*cuts)
        line = source.key("steps", near).span.line
        lost = sum(source.text.count("\n", start, end) for start, end, _ in cuts if end < line)
        yield Fault("no call for help", text, "late-call-for-help", line - lost, f"`{near}`")


def _two_steps_on(pathway: Pathway) -> str | None:
    from chamberwise.engine.graph.targets import targets

    for first in targets(pathway.steps[pathway.start]):
        for second in targets(pathway.steps[first.step]):
            if second.step not in (pathway.start, first.step):
                return second.step
    return None


def _of_sources(source: Source, step: Step) -> Iterator[Fault]:
    at: Pointer = ("steps", step.id)
    if not step.sources:
        return
    text, cut = source.without(*at, "sources"), source.cut(*at, "sources")
    lost = source.text.count("\n", *cut[:2])
    for line in _claims(source, step):
        shown = line - lost if line > source.key(*at, "sources").span.line else line
        yield Fault("no sources", text, "no-source", shown)


def _claims(source: Source, step: Step) -> Iterator[int]:
    """Yield the lines of what nothing but the step's own sources stands for."""
    at: Pointer = ("steps", step.id)
    for place, caution in enumerate(step.cautions):
        if not caution.sources:
            yield source.key(*at, "cautions", place, str(caution.signal)).span.line
    if isinstance(step, Action) and not all(line.sources for line in step.lines):
        yield source.key(*at).span.line
    elif step.why:
        yield source.at(*at, "why").span.line
    elif isinstance(step, Outcome) and not all(line.sources for line in step.owed):
        yield source.key(*at).span.line


def _of_findings(source: Source) -> Iterator[Fault]:
    file = source.loaded.files[source.file]
    words = file.words or (file.pathway.words if file.pathway else None)
    for finding in words.findings.values() if words else ():
        signs = any(value.sign and not value.sources for value in finding.values)
        if finding.sources and signs and not finding.choice:
            at: Pointer = ("findings", finding.id)
            text = source.without(*at, "sources")
            line = source.key(*at).span.line
            yield Fault("signs without sources", text, "no-source", line, f"`{finding.id}`")


def _of_kit(source: Source) -> Iterator[Fault]:
    file = source.loaded.files[source.file]
    words = file.words or (file.pathway.words if file.pathway else None)
    for item in words.kit.values() if words else ():
        if item.sources and (item.why or item.amount):
            text = source.without("kit", item.id, "sources")
            line = source.key("kit", item.id).span.line
            yield Fault("kit without sources", text, "no-source", line, f"`{item.id}`")


def _of_approval(source: Source, pathway: Pathway) -> Iterator[Fault]:
    status = source.at("status")
    line = status.span.line
    if pathway.status is not Status.APPROVED:
        text = source.replaced((status, "approved"))
        if not pathway.approved_by:
            yield Fault("approved by nobody", text, "not-approved", line)
        return
    for key in ("approved by", "approved on"):
        yield Fault(f"no {key}", source.without(key), "not-approved", line)
    approver = source.at("approved by")
    text = source.replaced((approver, pathway.authors[0]))
    yield Fault("approved by the author", text, "not-approved", approver.span.line)


def _of_dates(source: Source) -> Iterator[Fault]:
    due, seen = source.at("review by"), source.at("reviewed")
    for day in ("2026-11-24", "2019-01-01"):
        text = source.replaced((due, day))
        yield Fault("review overdue", text, "review-overdue", due.span.line, day)
    text = source.replaced((due, "2027-01-01"), (seen, "2027-01-02"))
    yield Fault("dates crossed", text, "review-overdue", due.span.line, "`reviewed`")


def _of_acceptances(source: Source, pathway: Pathway) -> Iterator[Fault]:
    for check in ("never-used", "trapped"):
        new = ACCEPTED % check
        if pathway.accepted:
            text = source.with_entry(new, "accepted", 0)
        else:
            text = source.with_entry(f"accepted: [{new}]", "steps")
        yield Fault("unused acceptance", text, "unused-acceptance", _line_of(text, new))
    bare = "accepted: [{check: never-used, at: title}]\n\n"
    if not pathway.accepted:
        text = source.with_entry(bare, "steps")
        line = source.key("steps").span.line
        yield Fault("acceptance without reason", text, "missing-key", line, "`reason`")
