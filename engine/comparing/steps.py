"""Changes of one step that was there before, and how grave a step is that came or went."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from chamberwise.engine.checks.wording.rule import TextKind
from chamberwise.engine.comparing.cautions import changes_of_cautions
from chamberwise.engine.comparing.change import Change, Kind, Rating, gravest
from chamberwise.engine.comparing.lines import changes_of_lines, how_grave
from chamberwise.engine.comparing.saying import (
    EDITORIAL,
    PROCEDURAL,
    SAFETY,
    At,
    condition,
    effects,
    told,
)
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.step import (
    Action,
    Answer,
    Branch,
    Handover,
    Outcome,
    Question,
    Step,
    StepId,
)

LeadsAround = Callable[[StepId, StepId], bool]
"""Whether an arrow leads where it led before, but for steps on the way of which little hangs."""


def weight(step: Step) -> tuple[Rating, str]:
    """Return how much hangs on a step that came or went: as much as on the gravest thing in it."""
    if not isinstance(step, Action):
        return SAFETY, _("it decides, ends or hands over")
    if step.cautions or step.bound or step.effects.known or step.effects.stale:
        return SAFETY, _("it warns, changes what is known, or is bounded")
    found = [how_grave(line) for line in step.lines]
    rating = gravest(each for each, _why in found)
    why = next(
        (why for each, why in found if each is rating), _("it does nothing that rules speak of")
    )
    return (rating, why) if rating is SAFETY else (PROCEDURAL, _("it performs no act"))


def told_step(step: Step) -> str:
    """Return a step in words, as far as it has any."""
    match step:
        case Question():
            return step.question
        case Action():
            return " ".join(line.text for line in step.lines)
        case Outcome():
            return step.title
    return step.short or step.id


def changes_of_step(old: Step, new: Step, at: At, leads_around: LeadsAround) -> Iterator[Change]:
    """Yield every change between two versions of a step."""
    if type(old) is not type(new):
        kinds = type(old).__name__.lower(), type(new).__name__.lower()
        yield from at.value(Kind.STEP, SAFETY, *kinds, _("it is another kind of step"))
        return
    yield from changes_of_cautions(old.cautions, new.cautions, at)
    match old, new:
        case Question(), Question():
            yield from _question(old, new, at, leads_around)
        case Action(), Action():
            yield from _action(old, new, at)
            yield from _target(old.go_to, new.go_to, at, leads_around)
        case Branch(), Branch():
            yield from _branch(old, new, at, leads_around)
        case Handover(), Handover():
            yield from _handover(old, new, at, leads_around)
        case Outcome(), Outcome():
            yield from at.text(Kind.TITLE, TextKind.ANSWER, old.title, new.title)
            yield from changes_of_lines(old.owed, new.owed, at, Kind.OWED)
    yield from _of_any(old, new, at, leads_around)


def _target(
    old: StepId | None, new: StepId | None, at: At, around: LeadsAround
) -> Iterator[Change]:
    if old and new and old != new and around(old, new):
        yield from at.value(
            Kind.TARGET,
            PROCEDURAL,
            old,
            new,
            _("it leads to the same step, over one that came or went"),
        )
        return
    yield from at.value(Kind.TARGET, SAFETY, old, new, _("it leads elsewhere"))


def _question(old: Question, new: Question, at: At, around: LeadsAround) -> Iterator[Change]:
    yield from at.value(Kind.FINDING_ASKED, SAFETY, old.ask, new.ask, _("it asks something else"))
    yield from at.text(Kind.QUESTION, TextKind.QUESTION, old.question, new.question)
    before = {_key(each): each for each in old.answers}
    after = {_key(each): each for each in new.answers}
    for key, answer in before.items():
        if key not in after:
            here = at.part(_("answer `{answer}`").format(answer=answer.id))
            yield from here.value(
                Kind.ANSWER, SAFETY, _told_answer(answer), "", _("an answer is gone")
            )
    for key, answer in after.items():
        here = at.part(_("answer `{answer}`").format(answer=answer.id))
        if key not in before:
            yield from here.value(
                Kind.ANSWER, SAFETY, "", _told_answer(answer), _("an answer is new")
            )
        else:
            label = before[key].label
            yield from here.text(Kind.ANSWER, TextKind.ANSWER, label, answer.label)
            yield from _target(before[key].go_to, answer.go_to, here, around)
    kept = [key for key in before if key in after]
    if kept != [key for key in after if key in before]:
        order = tuple(before[key].id for key in kept), tuple(each.id for each in new.answers)
        yield from at.value(
            Kind.ORDER, EDITORIAL, *order, _("answers are offered in another order")
        )


def _key(answer: Answer) -> frozenset[str]:
    return frozenset(answer.means)


def _told_answer(answer: Answer) -> str:
    return _("{answer}, to {step}").format(
        answer=answer.label or told(answer.means) or answer.id, step=answer.go_to
    )


def _action(old: Action, new: Action, at: At) -> Iterator[Change]:
    yield from changes_of_lines(old.lines, new.lines, at)
    known = _("what is known afterwards changed")
    before, after = effects(old.effects), effects(new.effects)
    yield from at.each(Kind.EFFECT, SAFETY, before, after, known)
    yield from at.each(
        Kind.KIT, PROCEDURAL, old.needs, new.needs, _("what has to be to hand changed")
    )
    choice = _("which choice is shown here changed")
    yield from at.each(Kind.CHOICE, PROCEDURAL, old.choices, new.choices, choice)
    limit = _("a local target, not a benchmark")
    yield from at.value(Kind.TIME_TARGET, PROCEDURAL, old.time_target, new.time_target, limit)


def _branch(old: Branch, new: Branch, at: At, around: LeadsAround) -> Iterator[Change]:
    before = {_terms(row.when): row for row in old.rows}
    after = {_terms(row.when): row for row in new.rows}
    for key, row in before.items():
        if key not in after:
            here = at.part(_("row `{when}`").format(when=condition(row.when)))
            yield from here.value(
                Kind.ROW, SAFETY, _("to {step}").format(step=row.go_to), "", _("a row is gone")
            )
    for key, row in after.items():
        here = at.part(_("row `{when}`").format(when=condition(row.when)))
        if key not in before:
            yield from here.value(
                Kind.ROW, SAFETY, "", _("to {step}").format(step=row.go_to), _("a row is new")
            )
        else:
            yield from _target(before[key].go_to, row.go_to, here, around)
    kept = [key for key in before if key in after]
    order = [key for key in after if key in before]
    if kept != order:
        rows = [tuple(condition(after[key].when) for key in each) for each in (kept, order)]
        first = _("the first row that is true decides, and they come in another order")
        yield from at.value(Kind.ORDER, SAFETY, rows[0], rows[1], first)
    yield from _target(old.otherwise, new.otherwise, at.part("otherwise"), around)
    yield from _target(old.not_known, new.not_known, at.part("not known"), around)


def _terms(when: Condition) -> frozenset[tuple[str, frozenset[str]]]:
    return frozenset((name, frozenset(values)) for name, values in when.terms)


def _handover(old: Handover, new: Handover, at: At, around: LeadsAround) -> Iterator[Change]:
    yield from at.value(Kind.HANDOVER, SAFETY, old.to, new.to, _("it goes over to another pathway"))
    yield from at.text(Kind.SPOKEN, TextKind.SPOKEN, old.says, new.says)
    before, after = dict(old.on_return), dict(new.on_return)
    for outcome in dict.fromkeys((*before, *after)):
        here = at.part(_("coming back by `{outcome}`").format(outcome=outcome))
        yield from _target(before.get(outcome), after.get(outcome), here, around)


def _of_any(old: Step, new: Step, at: At, around: LeadsAround) -> Iterator[Change]:
    if old.bound and new.bound:
        times = old.bound.at_most, new.bound.at_most
        yield from at.value(Kind.BOUND, SAFETY, *times, _("it may be done more or less often"))
        here = at.part("after that")
        yield from _target(old.bound.after_that, new.bound.after_that, here, around)
    else:
        came = _("a bound came or went")
        yield from at.value(Kind.BOUND, SAFETY, _bound(old), _bound(new), came)
    yield from at.text(Kind.SHORT, TextKind.INSTRUCTION, old.short, new.short)
    yield from at.text(Kind.REASON, TextKind.REASON, old.why, new.why, EDITORIAL)
    part = _("it stands in another part of the operation")
    yield from at.value(Kind.PHASE, PROCEDURAL, old.phase, new.phase, part)
    yield from at.evidence(old.sources, new.sources)
    figures = _("other figures are worked here")
    yield from at.each(Kind.CALCULATION, PROCEDURAL, old.work, new.work, figures)
    before, after = dict(old.plan), dict(new.plan)
    for column in dict.fromkeys((*before, *after)):
        texts = before.get(column, ""), after.get(column, "")
        yield from at.part(_("plan `{column}`").format(column=column)).text(
            Kind.PLAN, TextKind.INSTRUCTION, *texts
        )


def _bound(step: Step) -> str:
    return (
        _("{number}, then to {step}").format(number=step.bound.at_most, step=step.bound.after_that)
        if step.bound
        else ""
    )
