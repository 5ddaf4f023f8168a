"""From a pathway to its reader's script."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import groupby

from chamberwise.engine.chart.labels import lowered
from chamberwise.engine.chart.numbers import step_numbers
from chamberwise.engine.chart.ways import Ends, Way, ways
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import (
    Action,
    Branch,
    Handover,
    Line,
    Outcome,
    PathwayId,
    Question,
    Step,
    StepId,
)
from chamberwise.exports.language.joining import alternatives
from chamberwise.exports.script.breath import breaths
from chamberwise.exports.script.content import Mark, Script, ScriptLine, ScriptStep
from chamberwise.exports.script.headlines import chart_title, headline
from chamberwise.exports.script.main_line import first_actions, main_line
from chamberwise.exports.script.minutes import call_outs

DEEPEST = 2
READER = "reader"


@dataclass(frozen=True, slots=True)
class _Told:
    library: Library
    own: Pathway
    line: tuple[StepId, ...]
    numbers: Mapping[StepId, int]
    minutes: Mapping[StepId, int]

    def of(self, step: StepId) -> str:
        return f"{self.own.id}/{step}"


def script(library: Library, name: PathwayId) -> Script:
    """Return the main line in words to be read aloud."""
    own = library.pathways[name]
    line = main_line(own)
    numbers = step_numbers(own)
    told = _Told(library, own, line, numbers, call_outs(first_actions(own, line)))
    steps = tuple(
        ScriptStep(
            told.of(each),
            numbers[each],
            breaths(headline(library, own.steps[each], own.id)),
            isinstance(own.steps[each], Question),
            tuple(_lines(told, own.steps[each])),
        )
        for each in line
    )
    trigger = own.wall_chart.use_when if own.wall_chart else own.summary
    return Script(own.title, trigger, steps)


def _lines(told: _Told, step: Step) -> Iterator[ScriptLine]:
    match step:
        case Question():
            yield ScriptLine(Mark.ANSWERED, (_("the answer"),))
            yield from _ways(told, step, Mark.ANSWER)
        case Action():
            yield from _action(told, step)
            yield from _ways(told, step, Mark.THEN)
        case Handover():
            yield ScriptLine(Mark.SAY, breaths(step.says), told.of(step.id))
            yield from _ways(told, step, Mark.ANSWER)
        case Outcome():
            yield from (line for each in step.owed for line in _spoken(told, [each]))
        case _:
            yield from _ways(told, step, Mark.ANSWER)


def _action(told: _Told, step: Action) -> Iterator[ScriptLine]:
    alike = groupby(step.lines, key=lambda line: (line.who, line.said_aloud))
    for _same, lines in alike:
        yield from _spoken(told, [*lines])
    yield ScriptLine(Mark.WAIT, breaths(_("for “done”")))
    if step.id in told.minutes:
        minute = told.minutes[step.id]
        said = ngettext("“{number}\u00a0minute.”", "“{number}\u00a0minutes.”", minute)
        yield ScriptLine(Mark.CALL_OUT, (said.format(number=minute),))


def _spoken(told: _Told, lines: list[Line]) -> Iterator[ScriptLine]:
    """Yield what is read out to a duty, or waited for from it and read back."""
    duties = told.library.words(told.own.id).duties
    first = lines[0]
    who = duties[first.who].title if first.who in duties else first.who
    texts = [line.text for line in lines]
    when = f"{first.when}: " if first.when else ""
    if not first.said_aloud:
        address = "" if first.who == READER else f"{who}: "
        said = [f"{address}{when}{texts[0]}", *texts[1:]]
        yield ScriptLine(Mark.SAY, tuple(each for one in said for each in breaths(one)))
    elif first.who == READER:
        yield ScriptLine(Mark.SAY, breaths(f"“{' '.join(texts)}”"))
    else:
        yield ScriptLine(Mark.HEAR, _heard(who, f"“{' '.join(texts)}”"))
        yield ScriptLine(Mark.READ_BACK)


def _heard(who: str, said: str) -> tuple[str, ...]:
    """Return what is waited for: on one line, or who it is and then the words."""
    whole = breaths(f"{who}: {said}", len(Mark.HEAR.told) + 1)
    return (
        whole if len(whole) == 1 else (*breaths(f"{who}:", len(Mark.HEAR.told) + 1), *breaths(said))
    )


def _ways(told: _Told, step: Step, mark: Mark) -> Iterator[ScriptLine]:
    for way in ways(told.library, told.own.id, step.id, frozenset(told.line)):
        if mark is Mark.THEN and not way.labels and _is_next(told, step.id, way):
            continue
        said = alternatives(lowered(way.labels))
        if said:
            yield ScriptLine(mark, breaths(f"{said}:", 2), told.of(step.id))
        yield from _onward(told, step.id, way)


def _is_next(told: _Told, here: StepId, way: Way) -> bool:
    place = told.line.index(here) + 1
    at_row = way.ends is Ends.AT_ROW and not way.done
    return at_row and place < len(told.line) and told.line[place] == way.step


def _onward(told: _Told, here: StepId, way: Way) -> Iterator[ScriptLine]:
    """Yield what is done on a way, at most two steps of it, and where to go on."""
    for deep, name in enumerate(way.done[:DEEPEST], 1):
        words = headline(told.library, told.own.steps[name])
        yield ScriptLine(Mark.SAY, breaths(f"{words}."), told.of(name), deep)
    if len(way.done) > DEEPEST:
        yield _go(_("number {number}, full pathway").format(number=told.numbers[way.done[DEEPEST]]))
        return
    if way.ends is Ends.OFF_CHART and isinstance(told.own.steps[way.step], Branch):
        yield from _by_what_is_known(told, here, way.step)
        return
    if _is_next(told, here, Way((), (), way.ends, way.step)):
        yield _go(_("the next, number {number}").format(number=told.numbers[way.step]))
        return
    yield _go(_end(told, way))


def _by_what_is_known(told: _Told, here: StepId, branch: StepId) -> Iterator[ScriptLine]:
    """Yield the rows of a branch that the main line passes over, and where each leads."""
    fork = told.own.steps[branch]
    words = headline(told.library, fork, told.own.id)
    yield ScriptLine(Mark.SAY, breaths(f"{words}."), told.of(branch), 1)
    for way in ways(told.library, told.own.id, branch, frozenset(told.line)):
        said = alternatives(lowered(way.labels))
        yield ScriptLine(Mark.ANSWER, breaths(f"{said}:", 5), told.of(branch), 1)
        first = way.done[0] if way.done else way.step
        if _is_next(told, here, way):
            yield _go(_("the next, number {number}").format(number=told.numbers[first]), 2)
        else:
            end = (
                _("number {number}, full pathway").format(number=told.numbers[first])
                if way.done
                else _end(told, way)
            )
            yield _go(end, 2)


def _end(told: _Told, way: Way) -> str:
    number = told.numbers[way.step]
    step = told.own.steps[way.step]
    if way.ends is Ends.AT_ROW:
        return _("number {number}").format(number=number)
    if way.ends is Ends.OFF_CHART:
        return _("number {number}, full pathway").format(number=number)
    if isinstance(step, Handover):
        return _("the chart “{title}”").format(
            title=step.short or chart_title(told.library, step.to)
        )
    return _("the end: {headline} ({number})").format(
        headline=headline(told.library, step), number=number
    )


def _go(where: str, deep: int = 1) -> ScriptLine:
    return ScriptLine(Mark.GO_TO, breaths(where, len(Mark.GO_TO.told) + 4), deep=deep)
