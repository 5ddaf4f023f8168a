"""The pathway around where a walk stands, and phase by phase, as an indented tree of text."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.graph.targets import Target, targets
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.step import Action, Branch, Handover, Outcome, Question, Step
from chamberwise.engine.walk.walk import Walk
from chamberwise.exports.record.naming import answer_label, step_name
from chamberwise.tui.present.parts import GAP, Part, Tone
from chamberwise.tui.present.trail import trail

BACK = 2
AHEAD = 2
HERE = N_("YOU ARE HERE:")
BEEN = N_("been here:")


def around(walk: Walk) -> list[Part]:
    """Return two steps back, the step stood on, and the next steps with what leads to them."""
    parts = [Part(_("Where this walk is"), "", Tone.MARK)]
    for row in trail(walk)[-BACK:]:
        parts.append(Part(f"{row.text} -> {row.answer}", f"  {row.number}  ", Tone.CALM))
    number = len(walk.legs) + 1
    parts.append(
        Part(
            _named(walk, walk.state.place),
            f"> {number}  {_(HERE)} ",
            Tone.STRONG,
        )
    )
    return [*parts, *_onward(walk, walk.state.place, "     ", AHEAD)]


def _onward(walk: Walk, place: Place, indent: str, depth: int) -> Iterator[Part]:
    for target, there in _arrows(walk, place):
        said = _arrow_label(walk, place, target)
        lead = f"{indent}-> {said}: " if said else f"{indent}-> "
        known = there.step in walk.library.pathways[there.pathway].steps
        name = _named(walk, there) if known else there.step
        yield Part(name, lead, hang=len(indent) + 3)
        if known and depth > 1:
            yield from _onward(walk, there, indent + "     ", depth - 1)


def _arrows(walk: Walk, place: Place) -> Iterator[tuple[Target, Place]]:
    step = walk.library.step(place)
    for target in targets(step):
        yield target, Place(place.pathway, target.step)


def phase_steps(walk: Walk, phase: str) -> list[Part]:
    """Return every step of one phase with its arrows; where the walk was and is, is marked."""
    here = walk.state.place
    pathway = walk.library.pathways[here.pathway]
    been = {leg.before.place for leg in walk.legs}
    number = tuple(pathway.phases).index(phase) + 1
    parts = [
        Part(
            _("Phase {number} of {phases}: {phase}").format(
                number=number, phases=len(pathway.phases), phase=pathway.phases[phase]
            ),
            "",
            Tone.MARK,
        )
    ]
    for step in pathway.steps.values():
        if step.phase != phase:
            continue
        place = Place(pathway.id, step.id)
        mark = f"* {_(BEEN)} " if place in been else "  "
        if place == here:
            mark = f"> {_(HERE)} "
        tone = Tone.STRONG if place == here else Tone.PLAIN
        parts += [GAP, Part(_named(walk, place), mark, tone, hang=4)]
        parts += _onward(walk, place, "    ", 1)
    return parts


def _named(walk: Walk, place: Place) -> str:
    step = walk.library.step(place)
    return f"{step_name(walk.library, place)} ({_kind(walk, step)})"


def _kind(walk: Walk, step: Step) -> str:
    match step:
        case Question():
            return _("question")
        case Action():
            return _("action")
        case Branch():
            return _("goes on by itself")
        case Handover():
            return _("comes back") if step.on_return else _("does not come back")
        case Outcome():
            return _("end")


def _arrow_label(walk: Walk, place: Place, target: Target) -> str:
    step = walk.library.step(place)
    if step.bound and target.label == "after that":
        return _("after {count} times").format(count=step.bound.at_most)
    match step:
        case Question():
            answer = next(each for each in step.answers if each.id == target.label)
            return answer_label(walk.library.finding(place.pathway, step.ask), answer)
        case Action():
            return _("done")
        case Handover():
            return _("back with “{ending}”").format(ending=_ending(walk, step, target))
        case _other:
            return _row(target.label)


def _row(label: str) -> str:
    """Return how a branch goes on by itself: by the case that fits, or because none does."""
    if label.startswith("row "):
        return _("case {number}").format(number=label.removeprefix("row "))
    return {"otherwise": _("otherwise"), "not known": _("not known")}.get(label, label)


def _ending(walk: Walk, step: Handover, target: Target) -> str:
    over_there = walk.library.pathways.get(step.to)
    if over_there is None or target.label not in over_there.steps:
        return target.label
    return step_name(walk.library, Place(step.to, target.label))
