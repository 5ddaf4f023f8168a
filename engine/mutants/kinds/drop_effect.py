"""An effect of a step, or of an act that the pathway uses, is forgotten."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Outcome
from chamberwise.engine.model.words import ActId, Effects, Words
from chamberwise.engine.mutants.editing import with_steps
from chamberwise.engine.mutants.mutant import Mutant, mutant

KIND = "drop-effect"


@dataclass(frozen=True, slots=True)
class Lost:
    """What is forgotten of a finding: its key in a mutant's id, and how it is told."""

    key: str
    of_step: str
    of_act: str
    finding: str = ""


KNOWN = Lost(
    "makes known",
    N_("`{step}` no longer makes known {finding}"),
    N_("the act `{act}` no longer makes known {finding}"),
)
STALE = Lost(
    "makes stale",
    N_("`{step}` no longer makes stale {finding}"),
    N_("the act `{act}` no longer makes stale {finding}"),
)


def mutants(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield the pathway without each effect of its steps, then of each act it uses."""
    for name, step in pathway.steps.items():
        if isinstance(step, Action):
            for lost, rest in _each_dropped(step.effects):
                edited = with_steps(pathway, replace(step, effects=rest))
                what = _(lost.of_step).format(step=name, finding=lost.finding)
                yield mutant(KIND, f"{name}/{lost.key} {lost.finding}", what, edited)
    for act in acts_used(pathway):
        yield from _of_act(act, pathway, shared)


def _of_act(act: ActId, pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    words = pathway.words if act in pathway.words.acts else shared
    if act not in words.acts:
        return
    for lost, rest in _each_dropped(words.acts[act].effects):
        acts = {**words.acts, act: replace(words.acts[act], effects=rest)}
        changed = replace(words, acts=acts)
        edited = replace(pathway, words=changed) if words is pathway.words else changed
        what = _(lost.of_act).format(act=act, finding=lost.finding)
        yield mutant(KIND, f"act {act}/{lost.key} {lost.finding}", what, edited)


def acts_used(pathway: Pathway) -> tuple[ActId, ...]:
    """Return the acts of a pathway's lines, owed ones too, each once in document order."""
    lines = (
        line
        for step in pathway.steps.values()
        for line in (
            step.lines
            if isinstance(step, Action)
            else step.owed
            if isinstance(step, Outcome)
            else ()
        )
    )
    return tuple(dict.fromkeys(line.act for line in lines if line.act is not None))


def _each_dropped(effects: Effects) -> Iterator[tuple[Lost, Effects]]:
    for name, _values in effects.known:
        known = tuple(each for each in effects.known if each[0] != name)
        yield replace(KNOWN, finding=name), replace(effects, known=known)
    for name in effects.stale:
        stale = tuple(each for each in effects.stale if each != name)
        yield replace(STALE, finding=name), replace(effects, stale=stale)
