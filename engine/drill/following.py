"""Where the pathway goes by what somebody did, in whatever order they did it.

Acts done early are kept until the pathway comes to them. An action is over once its acts were
done; those that change nothing are passed over when somebody goes on without them.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

from chamberwise.engine.drill.scenario import Scenario, is_true
from chamberwise.engine.drill.standing import Standing, knows, step_of, was_done
from chamberwise.engine.meaning.advance import Decided, Passage, PassedOver, moves, passage
from chamberwise.engine.meaning.moments import Moment, moments_of
from chamberwise.engine.meaning.piecemeal import completed, seen
from chamberwise.engine.meaning.state import Answered, Done, State
from chamberwise.engine.model.step import CANNOT_TELL, Action, Handover, Outcome, Question
from chamberwise.engine.model.words import NO_EFFECTS, ActId, FindingId

MOST_STEPS = 500


def follow(scenario: Scenario, standing: Standing, act: ActId | None = None) -> Standing:
    """Return the standing once the pathway has gone as far as it can after an act or a look."""
    for _ in range(MOST_STEPS):
        onward = _onward(scenario, _glanced(scenario, standing), act)
        if onward is None:
            return _glanced(scenario, standing)
        standing = onward
    return standing


def arrived(scenario: Scenario, standing: Standing, passage: Passage) -> Standing:
    """Return the standing in the state that a passage led to.

    A question passed over because the brief has told its answer counts as asked, once.
    """
    moments = list(standing.moments)
    for passed in (each for each in passage.silent if isinstance(each, PassedOver)):
        step = scenario.library.step(passed.place)
        asked = step.ask if isinstance(step, Question) else ""
        if asked in scenario.known and not any(moment.asks == asked for moment in moments):
            moments.append(_told(passage.state, passed, asked))
    way = [each.place for each in passage.silent if isinstance(each, PassedOver | Decided)]
    visited = tuple(dict.fromkeys([*standing.visited, *way, passage.state.place]))
    return replace(standing, state=passage.state, visited=visited, moments=tuple(moments))


def _told(state: State, passed: PassedOver, finding: FindingId) -> Moment:
    return Moment(passed.place, state.possible, state.last_seen, asks=finding, answer=passed.answer)


def _glanced(scenario: Scenario, standing: Standing) -> Standing:
    """Return the standing with what is seen without looking, wherever it is not known afresh."""
    for finding in scenario.book.at_a_glance:
        if not knows(scenario, standing, finding) and can_be_told(scenario, standing, finding):
            standing = noticed(scenario, standing, finding)
    return standing


def noticed(scenario: Scenario, standing: Standing, finding: FindingId) -> Standing:
    """Return the standing once what is true of a finding is known without anybody's looking."""
    made = seen(scenario.library, standing.state, finding, standing.truth[finding])
    return arrived(scenario, standing, made)


def looked_at(scenario: Scenario, standing: Standing, finding: FindingId) -> Standing:
    """Return the standing once somebody looked and saw what is true of a finding."""
    value = standing.truth[finding]
    made = seen(scenario.library, standing.state, finding, value)
    place, after = standing.state.place, made.state
    moment = Moment(place, after.possible, after.last_seen, asks=finding, answer=value)
    return arrived(scenario, replace(standing, moments=(*standing.moments, moment)), made)


def can_be_told(scenario: Scenario, standing: Standing, finding: FindingId) -> bool:
    """Whether a finding can be seen as things are."""
    return not any(
        finding in findings and is_true(scenario, condition, standing.truth)
        for condition, findings in scenario.book.unseen
    )


def _onward(scenario: Scenario, standing: Standing, act: ActId | None) -> Standing | None:
    step = step_of(scenario, standing)
    match step:
        case Question() if step.ask in standing.cannot_tell:
            return _not_told(scenario, standing, step.ask)
        case Action():
            return _over(scenario, standing, step, act)
        case Handover():
            made = passage(scenario.library, standing.state, Done())
            moments = moments_of(scenario.library, standing.state, Done())
            return arrived(scenario, replace(standing, moments=(*standing.moments, *moments)), made)
    return None


def _not_told(scenario: Scenario, standing: Standing, finding: FindingId) -> Standing | None:
    move = Answered(CANNOT_TELL)
    if move not in moves(scenario.library, standing.state):
        return None
    made = passage(scenario.library, standing.state, move)
    left = standing.cannot_tell - {finding}
    return arrived(scenario, replace(standing, cannot_tell=left), made)


def _over(
    scenario: Scenario, standing: Standing, action: Action, act: ActId | None
) -> Standing | None:
    lacking = lacks(scenario, standing, action)
    acts = acts_of(action)
    went_on = act not in acts and all(_passes(scenario, standing, each) for each in lacking)
    if lacking and not went_on:
        return None
    kept = Counter(standing.kept)
    kept.subtract(acts)
    left = replace(standing, kept=+kept)
    return arrived(scenario, left, completed(scenario.library, standing.state))


def acts_of(action: Action) -> tuple[ActId, ...]:
    """Return the acts of an action, in order."""
    return tuple(line.act for line in action.lines if line.act is not None)


def lacks(scenario: Scenario, standing: Standing, action: Action) -> tuple[ActId, ...]:
    """Return the acts of an action that still have to be done, in order."""
    return tuple(
        act
        for act in dict.fromkeys(acts_of(action))
        if not _is_kept(scenario, standing, act) and can_be_done(scenario, standing, act)
    )


def _is_kept(scenario: Scenario, standing: Standing, act: ActId) -> bool:
    """Whether an act was done early, and nothing since has undone what it was good for."""
    since = scenario.renewed_by.get(act, frozenset())
    return standing.kept.get(act, 0) > 0 and was_done(standing, (act,), since)


def can_be_done(scenario: Scenario, standing: Standing, act: ActId) -> bool:
    """Whether an act can be done at all as things are."""
    return is_true(scenario, scenario.turns_of(act).only_while, standing.truth)


def is_minor(scenario: Scenario, act: ActId) -> bool:
    """Whether leaving an act out changes nothing that is known or true."""
    critical = any(act == each.act for each in scenario.book.critical)
    return not critical and can_be_reused(scenario, act) and not scenario.turns_of(act).turns


def _passes(scenario: Scenario, standing: Standing, act: ActId) -> bool:
    """Whether the pathway goes on without an act when somebody does: it is minor, or a repeat."""
    repeat = can_be_reused(scenario, act) and act in standing.done
    return repeat or is_minor(scenario, act)


def can_be_reused(scenario: Scenario, act: ActId) -> bool:
    """Whether having done an act once is enough: it takes nothing of what is known."""
    known = scenario.library.words(scenario.pathway).acts.get(act)
    return known is None or known.effects == NO_EFFECTS


def is_at_the_end(scenario: Scenario, standing: Standing) -> bool:
    """Whether the pathway stands on an outcome."""
    return isinstance(step_of(scenario, standing), Outcome)
