"""A library in a line a step, so that a failing example can be read."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from chamberwise.engine.graph.targets import targets
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Action, Branch, Handover, Question, Step
from chamberwise.engine.model.words import Effects, Words


class ToldLibrary(Library):
    """A library whose representation is a page to read."""

    def __repr__(self) -> str:
        return "\n" + "\n".join(_lines(self))

    def _repr_pretty_(self, printer: Any, cycle: bool) -> None:
        printer.text(repr(self))


def _lines(library: Library) -> Iterator[str]:
    yield from _of_words(library.shared)
    for pathway in library.pathways.values():
        yield f"{pathway.id}:"
        yield from _of_words(pathway.words)
        for step in pathway.steps.values():
            arrows = ", ".join(f"{each.label or 'on'} -> {each.step}" for each in targets(step))
            bound = f" (at most {step.bound.at_most})" if step.bound else ""
            yield f"  {step.id}{bound}: {_said(step)}; {arrows}"


def _of_words(words: Words) -> Iterator[str]:
    for finding in words.findings.values():
        values = " ".join(value.id for value in finding.values)
        chosen = f" chosen {finding.choice.chosen}" if finding.choice else ""
        restless = " restless" if finding.may_change_by_itself else ""
        yield f"  {finding.id}: {values}{restless}{chosen}"
    for act in words.acts.values():
        yield f"  act {act.id}: {_effects(act.effects)}"


def _said(step: Step) -> str:
    match step:
        case Question():
            return f"ask {step.ask} " + " | ".join(" ".join(each.means) for each in step.answers)
        case Action():
            acts = " ".join(line.act for line in step.lines if line.act)
            return f"do {acts} {_effects(step.effects)}"
        case Branch():
            return "branch " + "; ".join(str(row.when.terms) for row in step.rows)
        case Handover():
            return f"hand over to {step.to}"
    return "end"


def _effects(effects: Effects) -> str:
    known = " ".join(f"{name}={'|'.join(values)}" for name, values in effects.known)
    return f"known [{known}] stale [{' '.join(effects.stale)}]"
