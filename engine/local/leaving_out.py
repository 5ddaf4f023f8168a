"""What a changed step no longer has of what guards a walk: acts, warnings, doubts, bounds."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator

from chamberwise.engine.diagnostics.problem import Problem, pointer_text
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.local import codes
from chamberwise.engine.local.locating import Located
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import (
    CANNOT_TELL,
    Action,
    Outcome,
    Question,
    SignalWord,
    Step,
)
from chamberwise.engine.reading.local_sheet import Verb
from chamberwise.engine.reading.tree import Tree

_GRAVE = {
    SignalWord.DANGER: N_("no longer gives the danger: {harm}"),
    SignalWord.WARNING: N_("no longer gives the warning: {harm}"),
}

NO_ACT = N_("no longer names the act `{act}`")


def left_out(before: Pathway, now: Pathway, sheet: Tree, place: Located) -> Problem | None:
    """Return the problem of an operation after which a step guards less than it did."""
    if place.place[:1] != ("steps",) or place.operation.verb is Verb.REWORD:
        return None
    old, new = before.steps.get(str(place.place[1])), now.steps.get(str(place.place[1]))
    if old is None:
        return None
    key = str(place.place[2]) if len(place.place) > 2 else ""
    gone = [*(what_is_gone(old, new, key) if new else _gone_with_it(old, before, now))]
    if not gone:
        return None
    message = _("after the change `{step}` {gone}").format(
        step=pointer_text(place.place[:2]), gone="; ".join(gone)
    )
    advice = _("Put it back, unless that is what is meant: then whoever approves has to know.")
    said = place.operation.said
    return codes.LEAVES_OUT.at(sheet.file, said, sheet.span(said), message, advice)


def _gone_with_it(old: Step, before: Pathway, now: Pathway) -> Iterator[str]:
    """Yield what went with a whole step and stands in no other that came for it."""
    were, are = Counter(_all_acts(before)), Counter(_all_acts(now))
    for act in dict.fromkeys(_acts(old)):
        if are[act] < were[act]:
            yield _(NO_ACT).format(act=act)
    told = {(each.signal, each.harm) for step in now.steps.values() for each in step.cautions}
    for caution in old.cautions:
        if caution.signal in _GRAVE and (caution.signal, caution.harm) not in told:
            yield _(_GRAVE[caution.signal]).format(harm=caution.harm)
    asked = [step.ask for step in now.steps.values() if isinstance(step, Question)]
    if isinstance(old, Question) and old.ask not in asked:
        yield _("no longer asks `{finding}`").format(finding=old.ask)


def what_is_gone(old: Step, new: Step, key: str = "") -> Iterator[str]:
    """Yield, as clauses, what a step guards less than it did: under one key, or in all of it."""
    for keys, told in _BY_KEY:
        if not key or key in keys:
            yield from told(old, new)


def _fewer_acts(old: Step, new: Step) -> Iterator[str]:
    before, after = _acts(old), _acts(new)
    for act in dict.fromkeys(before):
        if act not in after:
            yield _(NO_ACT).format(act=act)
        elif after.count(act) < before.count(act):
            yield _("names the act `{act}` fewer times").format(act=act)
    if before != after and Counter(before) == Counter(after):
        yield _("has its acts in another order")


def _fewer_cautions(old: Step, new: Step) -> Iterator[str]:
    kept = [(each.signal, each.harm) for each in new.cautions]
    for caution in old.cautions:
        if caution.signal in _GRAVE and (caution.signal, caution.harm) not in kept:
            yield _(_GRAVE[caution.signal]).format(harm=caution.harm)


def _looser_bound(old: Step, new: Step) -> Iterator[str]:
    if old.bound and (new.bound is None or new.bound.at_most > old.bound.at_most):
        yield _("may be entered more often than {count} times").format(count=old.bound.at_most)


def _less_doubt(old: Step, new: Step) -> Iterator[str]:
    if isinstance(old, Question) and isinstance(new, Question):
        for answer in sorted(_with_doubt(new) - _with_doubt(old)):
            yield _("goes on as for `{answer}` when nobody can tell").format(answer=answer)


def _with_doubt(step: Question) -> set[str]:
    """Return the answers that lead where the team goes when nobody can tell."""
    leads = {each.id: each.go_to for each in step.answers}
    to = leads.pop(CANNOT_TELL, None)
    return {answer for answer, target in leads.items() if target == to}


def _surer(old: Step, new: Step) -> Iterator[str]:
    if not (isinstance(old, Action) and isinstance(new, Action)):
        return
    for finding in old.effects.stale:
        if finding not in new.effects.stale:
            yield _("no longer puts `{finding}` in doubt").format(finding=finding)
    known = dict(old.effects.known)
    for finding, values in new.effects.known:
        if finding not in known or not set(known[finding]) <= set(values):
            yield _("makes more known of `{finding}`").format(finding=finding)


def _all_acts(pathway: Pathway) -> Iterator[str]:
    for step in pathway.steps.values():
        yield from _acts(step)


def _acts(step: Step) -> list[str]:
    lines = step.lines if isinstance(step, Action) else ()
    lines = step.owed if isinstance(step, Outcome) else lines
    return [line.act for line in lines if line.act]


_BY_KEY: tuple[tuple[tuple[str, ...], Callable[[Step, Step], Iterator[str]]], ...] = (
    (("do", "owed"), _fewer_acts),
    (("cautions",), _fewer_cautions),
    (("at most", "after that"), _looser_bound),
    (("makes stale", "makes known"), _surer),
    (("answers",), _less_doubt),
)
"""What guards a step, by the keys under which it stands."""
