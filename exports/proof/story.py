"""From a counterexample to its story: every question, act and handover up to where it broke."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.advance import Passage, PassedOver
from chamberwise.engine.meaning.moments import Moment
from chamberwise.engine.meaning.state import Answered
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.rule import Extent, Rule
from chamberwise.engine.model.step import Action, Handover, Line, Outcome, Question
from chamberwise.engine.proof.replay_key import key_of
from chamberwise.engine.proof.verdict import Counterexample
from chamberwise.engine.reading.library import Loaded
from chamberwise.exports.proof.cause import cause
from chamberwise.exports.proof.content import Story, StoryKind, StoryLine, StoryStep
from chamberwise.exports.proof.known_then import known_then
from chamberwise.exports.proof.telling import Leg, Telling
from chamberwise.exports.record.naming import (
    READER,
    act_title,
    answer_label,
    duty_title,
    line_voice,
    step_name,
)
from chamberwise.exports.record.passed import told

OPENS = N_("from here on the rule is in force")
CLOSES = N_("here the rule is in force no longer")
_OPENED_ONCE = frozenset({Extent.AFTER})
_OPENED_ANEW = frozenset({Extent.BETWEEN, Extent.AFTER_UNTIL})


def story_of(
    loaded: Loaded, rule: Rule, counterexample: Counterexample, replay: Callable[[str], str]
) -> Story:
    """Return the story of a counterexample; `replay` makes the command out of its key."""
    telling = Telling(loaded.library, rule, counterexample)
    key = key_of(loaded, counterexample.pathway, counterexample.moves)
    return Story(
        passed_at_start=_passed(telling, telling.first),
        steps=tuple(_steps(telling)),
        cause=cause(telling),
        at_end=counterexample.moment is None,
        known=tuple(known_then(telling)),
        key=key,
        replay=replay(key),
    )


def _steps(telling: Telling) -> Iterator[StoryStep]:
    remarks = _remarks(telling)
    for number, leg in enumerate(telling.legs, 1):
        yield _step(telling, number, leg, remarks)
    if telling.at_the_end:
        yield _end(telling, remarks)


def _step(telling: Telling, number: int, leg: Leg, remarks: dict[int, str]) -> StoryStep:
    library, place = telling.library, leg.before.place
    step = library.step(place)
    lines: tuple[StoryLine, ...] = ()
    kind, answer, remark, breaks = StoryKind.DONE, "", "", False
    if isinstance(step, Action):
        lines = _lines(telling, place, step.lines, leg.first, remarks)
    else:
        remark = remarks.get(leg.first, "")
        breaks = telling.counterexample.moment == leg.first
    if isinstance(step, Question) and isinstance(leg.move, Answered):
        given = next(each for each in step.answers if each.id == leg.move.answer)
        kind = StoryKind.ASKED
        answer = answer_label(library.finding(place.pathway, step.ask), given)
    elif isinstance(step, Handover):
        kind = StoryKind.HANDED_OVER
        lines = (StoryLine(_(READER), _("says"), step.says),) if step.says else ()
    return StoryStep(
        number=number,
        kind=kind,
        place=_place(place),
        text=step_name(library, place),
        answer=answer,
        lines=lines,
        remark=remark,
        breaks=breaks,
        passed=() if _breaks_in(telling, leg) else _passed(telling, leg.made),
    )


def _breaks_in(telling: Telling, leg: Leg) -> bool:
    moment = telling.counterexample.moment
    return moment is not None and leg.first <= moment < leg.first + len(leg.moments)


def _end(telling: Telling, remarks: dict[int, str]) -> StoryStep:
    place, library = telling.last.place, telling.library
    step = library.step(place)
    assert isinstance(step, Outcome)
    first = len(telling.moments) - len(telling.at_the_end)
    last = len(telling.moments) - 1
    return StoryStep(
        number=len(telling.legs) + 1,
        kind=StoryKind.ENDED,
        place=_place(place),
        text=step.title,
        lines=_lines(telling, place, step.owed, first, remarks),
        remark=remarks.get(last, ""),
        breaks=telling.counterexample.moment in (None, last),
    )


def _place(place: Place) -> str:
    return f"{place.pathway}/{place.step}"


def _lines(
    telling: Telling, place: Place, lines: Iterable[Line], first: int, remarks: dict[int, str]
) -> tuple[StoryLine, ...]:
    words = telling.library.words(place.pathway)
    return tuple(
        StoryLine(
            who=duty_title(words, line.who),
            voice=line_voice(line),
            text=line.text,
            act=act_title(words, line.act) if line.act in telling.acts and line.act else "",
            remark=remarks.get(number, ""),
            breaks=telling.counterexample.moment == number,
        )
        for number, line in enumerate(lines, first)
    )


def _remarks(telling: Telling) -> dict[int, str]:
    """Return, by moment before the break, where the scope of the rule opens and closes."""
    scope, is_open = telling.rule.scope, False
    found: dict[int, str] = {}
    if scope.extent not in _OPENED_ONCE | _OPENED_ANEW:
        return found
    for number, moment in enumerate(telling.moments[: telling.broke_at]):
        if is_open and scope.extent in _OPENED_ANEW and telling.shows(scope.closes, moment):
            is_open, found[number] = False, _(CLOSES)
        elif not is_open and _opens(telling, moment):
            is_open, found[number] = True, _(OPENS)
    return found


def _opens(telling: Telling, moment: Moment) -> bool:
    scope = telling.rule.scope
    return telling.shows(scope.opens, moment) and not telling.shows(scope.closes, moment)


def _passed(telling: Telling, made: Passage) -> tuple[str, ...]:
    """Return what was passed silently; of questions not asked, those of the rule's findings."""
    lines = zip(made.silent, told(telling.library, made), strict=True)
    return tuple(
        line
        for silent, line in lines
        if not isinstance(silent, PassedOver) or _asks(telling, silent.place) in telling.findings
    )


def _asks(telling: Telling, place: Place) -> str:
    step = telling.library.step(place)
    return step.ask if isinstance(step, Question) else ""
