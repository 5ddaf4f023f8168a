"""Two lines of an action that one person does, one right after the other, change places.

What two people do stands in some order on the page and may happen at once; so does what one person
says while the hands go on.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Line
from chamberwise.engine.model.words import Words
from chamberwise.engine.mutants.editing import numbered, with_steps
from chamberwise.engine.mutants.mutant import Mutant, mutant

KIND = "swap-lines"


def mutants(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield each action with two lines exchanged whose acts follow each other.

    Lines without an act between them stay where they are.
    """
    for name, step in pathway.steps.items():
        if not isinstance(step, Action):
            continue
        places = [place for place, line in enumerate(step.lines) if line.act is not None]
        names = list(numbered(step.lines[place].act or "" for place in places))
        for (one, first), (other, second) in pairwise(zip(places, names, strict=True)):
            if not _is_in_order(step.lines[one], step.lines[other]):
                continue
            lines = list(step.lines)
            lines[one], lines[other] = lines[other], lines[one]
            what = _("in `{name}`, `{second}` comes before `{first}`").format(
                name=name, second=second, first=first
            )
            swapped = with_steps(pathway, replace(step, lines=tuple(lines)))
            yield mutant(KIND, f"{name}/{first} <-> {second}", what, swapped)


def _is_in_order(one: Line, other: Line) -> bool:
    is_as_loud = one.said_aloud == other.said_aloud
    return one.who == other.who and one.act != other.act and is_as_loud
