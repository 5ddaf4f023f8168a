"""A book of drills, or what acts do in drills, with every text that people read said anew.

Words that are typed stay as they are: triggers, phrases and what an answer is said as.
"""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.model.drill import (
    Authored,
    DrillBook,
    Inject,
    InTruth,
    Opening,
    Reply,
    TruthBook,
)
from chamberwise.engine.translating.retelling import Say, unless_empty


def retold_book(book: DrillBook, say: Say) -> DrillBook:
    """Return a book of drills with its texts said anew, in document order."""
    tell = unless_empty(say)
    return replace(
        book,
        what_it_is=tell(("is",), book.what_it_is),
        could_be=_texts(book.could_be, ("could be",), tell),
        brief={name: _texts(said, ("brief", name), tell) for name, said in book.brief.items()},
        openings=tuple(_opening(each, tell) for each in book.openings),
        decoys=_texts(book.decoys, ("decoys",), tell),
        injects=tuple(_inject(each, tell) for each in book.injects),
        critical=tuple(
            replace(each, why=tell(("critical", number, "why"), each.why))
            for number, each in enumerate(book.critical)
        ),
        tasks=tuple(
            replace(each, text=tell(("tasks", each.id, "does"), each.text)) for each in book.tasks
        ),
        reader=_texts(book.reader, ("reader",), tell),
        scenarios=tuple(_authored(each, tell) for each in book.scenarios),
    )


def retold_truth(truth: TruthBook, say: Say) -> TruthBook:
    """Return what acts do in drills with its texts said anew."""
    tell = unless_empty(say)

    def at(act: str) -> Pointer:
        return ("wrong acts" if act in truth.harms else "other acts", act)

    return TruthBook(
        {
            name: replace(act, title=tell((*at(name), "title"), act.title))
            for name, act in truth.acts.items()
        },
        {
            name: replace(
                harm,
                why=tell((*at(name), "harm"), harm.why),
                instead=tell((*at(name), "instead"), harm.instead),
            )
            for name, harm in truth.harms.items()
        },
        {name: _in_truth(each, ("in truth", name), tell) for name, each in truth.in_truth.items()},
        {
            (finding, value): tuple(
                replace(each, shows=tell(("seen as", finding, value, number, "shows"), each.shows))
                for number, each in enumerate(several)
            )
            for (finding, value), several in truth.seen_as.items()
        },
    )


def _in_truth(of: InTruth, at: Pointer, tell: Say) -> InTruth:
    turns = []
    for number, turn in enumerate(of.turns):
        here: Pointer = (*at, "turns", number)
        shows = tell((*here, "shows"), turn.shows)
        turns.append(replace(turn, shows=shows, lesson=tell((*here, "lesson"), turn.lesson)))
    return replace(of, turns=tuple(turns), otherwise=tell((*at, "otherwise"), of.otherwise))


def _opening(opening: Opening, tell: Say) -> Opening:
    at: Pointer = ("openings", opening.id)
    return replace(
        opening,
        so_far=tell((*at, "so far"), opening.so_far),
        cues=_texts(opening.cues, (*at, "cues"), tell),
        calls=tuple((act, tell((*at, "calls", act), title)) for act, title in opening.calls),
    )


def _inject(inject: Inject, tell: Say) -> Inject:
    at: Pointer = ("injects", inject.id)

    def reply(each: Reply) -> Reply:
        here: Pointer = (*at, "replies", each.act)
        title = tell((*here, "title"), each.title)
        return replace(each, title=title, shows=tell((*here, "shows"), each.shows))

    return replace(
        inject,
        title=tell((*at, "title"), inject.title),
        shows=tell((*at, "shows"), inject.shows),
        replies=tuple(reply(each) for each in inject.replies),
    )


def _authored(authored: Authored, tell: Say) -> Authored:
    at: Pointer = ("scenarios", authored.id)
    decoys = authored.decoys
    return replace(
        authored,
        title=tell((*at, "title"), authored.title),
        brief=_texts(authored.brief, (*at, "brief"), tell),
        so_far=tell((*at, "so far"), authored.so_far),
        cues=_texts(authored.cues, (*at, "cues"), tell),
        decoys=None if decoys is None else _texts(decoys, (*at, "decoys"), tell),
    )


def _texts(texts: tuple[str, ...], at: Pointer, tell: Say) -> tuple[str, ...]:
    return tuple(tell((*at, number), text) for number, text in enumerate(texts))
