"""Why a question is asked again, and what a move made stale."""

from __future__ import annotations

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.layout import Field, layout_of
from chamberwise.engine.meaning.state import Freshness, State
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Action, Question
from chamberwise.engine.model.words import Words
from chamberwise.engine.walk.walk import Walk, made_stale_by
from chamberwise.exports.record.naming import action_name, value_labels


def asked_again(walk: Walk) -> str:
    """Return why the question stood on is asked again, or nothing where it is asked afresh."""
    step, place = walk.step, walk.state.place
    if not isinstance(step, Question):
        return ""
    field = layout_of(walk.library).field(place.pathway, step.ask)
    if walk.state.freshness(field) is not Freshness.STALE:
        return ""
    last = value_labels(field.finding, walk.state.values(field))
    return _("Asked again: {why} Last seen: {values}.").format(why=cause(walk, field), values=last)


def cause(walk: Walk, field: Field) -> str:
    """Return by what a stale finding became so, as a sentence."""
    found = made_stale_by(walk, field)
    if found is None:
        return _("it may have changed.")
    action, place = found
    words = walk.library.words(place.pathway)
    by_act = _act_at_fault(action, field, words)
    if by_act or field.finding.id in action.effects.stale:
        name = by_act or action_name(action, words)
        return _("“{action}” may have changed it.").format(action=name)
    return _("it may change by itself, and since then: “{action}”.").format(
        action=action_name(action, words)
    )


def _act_at_fault(action: Action, field: Field, words: Words) -> str:
    for line in action.lines:
        act = words.acts.get(line.act or "")
        if act is not None and field.finding.id in act.effects.stale:
            return act.title
    return ""


def went_stale(library: Library, before: State, after: State) -> tuple[str, ...]:
    """Return the titles of the findings that were known before a move and are stale after it."""
    return tuple(
        field.finding.title
        for field in layout_of(library).fields(before.place.pathway)
        if before.freshness(field) in (Freshness.KNOWN, Freshness.PARTLY)
        and after.freshness(field) is Freshness.STALE
    )
