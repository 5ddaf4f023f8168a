"""A walk that tells two versions apart, in words, made again by `advance` on both."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chamberwise.engine.comparing.behaviour import Apart
from chamberwise.engine.comparing.compare import Comparison
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.advance import Passage, begin, moves, passage
from chamberwise.engine.meaning.state import Answered, Move, State
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import (
    Action,
    Caution,
    Handover,
    Line,
    Outcome,
    PathwayId,
    Question,
)
from chamberwise.exports.comparing.content import MetShown, MoveShown, WalkShown
from chamberwise.exports.language.values import told as told_value
from chamberwise.exports.record.naming import (
    READER,
    answer_label,
    duty_title,
    line_voice,
    step_name,
)
from chamberwise.exports.record.passed import told


def walk_shown(found: Comparison) -> WalkShown:
    """Return the walk of a comparison whose versions behave differently."""
    apart = found.behaviour
    assert isinstance(apart, Apart)
    made = tuple(_made(found.before, found.old.pathway, apart.old))
    last = made[-1][1] if made else begin(found.before, found.old.pathway)
    now = begin(found.new.library, found.new.pathway)
    for move in apart.new:
        now = passage(found.new.library, now.state, move)
    shown = tuple(
        _move(found.before, number, before, move, after if number < len(made) else None)
        for number, (before, after, move) in enumerate(made, 1)
    )
    return WalkShown(shown, _met(found.before, last), _met(found.new.library, now))


def _made(
    library: Library, pathway: PathwayId, walked: Sequence[Move]
) -> Iterator[tuple[State, Passage, Move]]:
    state = begin(library, pathway).state
    for move in walked:
        made = passage(library, state, move)
        yield state, made, move
        state = made.state


def _move(
    library: Library, number: int, state: State, move: Move, made: Passage | None
) -> MoveShown:
    step = library.step(state.place)
    passed = told(library, made) if made else ()
    name = step_name(library, state.place)
    if isinstance(step, Question) and isinstance(move, Answered):
        given = next(each for each in step.answers if each.id == move.answer)
        answer = answer_label(library.finding(state.place.pathway, step.ask), given)
        return MoveShown(number, _("Asked"), name, answer, passed)
    lead = _("Handed over") if isinstance(step, Handover) else _("Done")
    return MoveShown(number, lead, name, passed=passed)


def _met(library: Library, made: Passage) -> MetShown:
    state = made.state
    step, words = library.step(state.place), library.words(state.place.pathway)
    lead, lines = _("Stands at"), tuple[str, ...]()
    match step:
        case Question():
            finding = library.finding(state.place.pathway, step.ask)
            open_now = [each.answer for each in moves(library, state) if isinstance(each, Answered)]
            labels = (answer_label(finding, each) for each in step.answers if each.id in open_now)
            lead, lines = _("Asks"), (_("Answers: {labels}").format(labels=" / ".join(labels)),)
        case Action():
            lead = _("To do")
            lines = tuple(_line(each, duty_title(words, each.who)) for each in step.lines)
        case Handover():
            lead, lines = (
                _("Hands over"),
                (_("{reader} says: {says}").format(reader=_(READER), says=step.says),),
            )
        case Outcome():
            lead = _("Ends")
            lines = tuple(_line(each, duty_title(words, each.who)) for each in step.owed)
    lines = (*map(_caution, step.cautions), *lines)
    name = step_name(library, state.place)
    place = f"{state.place.pathway}/{state.place.step}"
    return MetShown(place, lead, name, lines, told(library, made))


def _line(line: Line, who: str) -> str:
    when = f"{line.when}: " if line.when else ""
    return f"{when}{who} {line_voice(line)}: {line.text}"


def _caution(caution: Caution) -> str:
    return f"{told_value(caution.signal).upper()}: {caution.harm} {caution.instead}"
