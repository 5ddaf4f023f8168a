"""What changes bear on: pathways whose walks come through, acts to rehearse, duties with cards."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from chamberwise.engine.comparing.change import Change, Rating
from chamberwise.engine.comparing.mending import ToMend
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Line, Outcome, PathwayId, Step
from chamberwise.engine.model.words import ActId
from chamberwise.engine.reading.digest import that_reach
from chamberwise.engine.stamp.content import content_digest
from chamberwise.engine.stamp.copies import Copy, Register

OF_ACTS = frozenset({"acts", "phones", "machine"})
"""Tables whose names are those of acts."""


@dataclass(frozen=True, slots=True)
class Touched:
    """What has to be done again.

    `printed` are the pathways whose sheets say something else now, `rehearsed` those whose walks
    meet something else, `acts` what is done there, and `duties` whose role cards changed.
    """

    printed: tuple[PathwayId, ...]
    rehearsed: tuple[PathwayId, ...]
    acts: tuple[ActId, ...]
    duties: tuple[str, ...]
    take_down: tuple[Copy, ...]
    mend: tuple[ToMend, ...] = ()
    """Places of local sheets that name what is called otherwise now, or is gone."""


def touched(
    old: Library,
    new: Library,
    pathway: PathwayId,
    found: Iterable[Change],
    register: Register,
    written: tuple[Library, Mapping[PathwayId, PathwayId]],
) -> Touched:
    """Return what the changes of a pathway bear on; `old` has the new names of steps.

    `written` is the old library as it stands, whose stamps are those on the sheets, and the
    pathways that are called otherwise now.
    """
    reached = (pathway, *that_reach(new, [pathway]))
    as_it_stood, renamed = written
    was = {now: name for name, now in renamed.items()}
    printed = tuple(
        name for name in reached if _digest(as_it_stood, was.get(name, name)) != _digest(new, name)
    )
    grave = [each for each in found if each.rating is not Rating.EDITORIAL]
    lines = [line for change in grave for line in _lines(change, old, new)]
    acts = [line.act for line in lines if line.act]
    acts += [each.at.name for each in grave if each.at.table in OF_ACTS and each.at.name]
    return Touched(
        printed,
        reached if grave else (),
        tuple(dict.fromkeys(acts)),
        tuple(dict.fromkeys(line.who for line in lines)),
        _to_take_down(new, printed, register, renamed),
    )


def _digest(library: Library, pathway: PathwayId) -> str:
    return content_digest(library, pathway) if pathway in library.pathways else ""


def _to_take_down(
    library: Library,
    printed: Iterable[PathwayId],
    register: Register,
    renamed: Mapping[PathwayId, PathwayId],
) -> tuple[Copy, ...]:
    now = {name: content_digest(library, name) for name in printed}
    return tuple(
        copy
        for copy in register.copies
        if copy.content != now.get(renamed.get(copy.pathway, copy.pathway), copy.content)
    )


def _lines(change: Change, old: Library, new: Library) -> Iterator[Line]:
    """Yield the lines of the step that a change is of, on both sides."""
    if change.at.table == "steps" and change.at.pathway is not None:
        for library in (old, new):
            pathway = library.pathways.get(change.at.pathway)
            if pathway is not None:
                yield from _of_step(pathway, change.at.name)


def _of_step(pathway: Pathway, name: str) -> tuple[Line, ...]:
    steps: Mapping[str, Step] = pathway.steps
    match steps.get(name):
        case Action(lines=lines):
            return lines
        case Outcome(owed=owed):
            return owed
    return ()
