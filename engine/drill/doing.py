"""What an act, a look or an inject does to a standing: the truth, the knowledge, the cues."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from random import Random

from chamberwise.engine.drill.entries import Did, Injected, Looked
from chamberwise.engine.drill.following import (
    arrived,
    can_be_done,
    can_be_told,
    follow,
    looked_at,
    noticed,
)
from chamberwise.engine.drill.run import Consequence, Event
from chamberwise.engine.drill.scenario import Scenario, is_true
from chamberwise.engine.drill.standing import Standing, was_done
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.moments import Moment
from chamberwise.engine.meaning.piecemeal import acted
from chamberwise.engine.model.drill import CERTAIN, Inject, Reply, Settings, Turn
from chamberwise.engine.model.words import About, ActId, FindingId, ValueId


def did(scenario: Scenario, standing: Standing, entry: Did, number: int) -> Standing:
    """Return the standing after an act, right or wrong. One that cannot be done changes nothing."""
    event = _event(scenario, standing, entry, number)
    standing = replace(standing, events=(*standing.events, event), cues=())
    if not can_be_done(scenario, standing, entry.act):
        return replace(standing, cues=(scenario.turns_of(entry.act).otherwise,))
    turned = _turned(scenario, standing, entry.act, number)
    known = acted(scenario.library, turned.state, entry.act)
    turned = replace(
        turned,
        moments=(*turned.moments, _moment(scenario, standing, entry)),
        done=(*turned.done, entry.act),
        kept=Counter(turned.kept) + Counter([entry.act]),
    )
    turned = arrived(scenario, turned, known)
    return follow(scenario, _replied(scenario, turned, entry), entry.act)


def looked(scenario: Scenario, standing: Standing, entry: Looked, number: int) -> Standing:
    """Return the standing after a look. What cannot be seen stays as unknown as it was."""
    event = _event(scenario, standing, entry, number)
    standing = replace(standing, events=(*standing.events, event), cues=())
    if entry.finding not in standing.truth:
        return standing
    if entry.saw is None:
        told = standing.cannot_tell | {entry.finding}
        return follow(scenario, replace(standing, cannot_tell=told))
    return follow(scenario, looked_at(scenario, standing, entry.finding))


def injected(scenario: Scenario, standing: Standing, entry: Injected) -> Standing:
    """Return the standing after something happened that the scenario had in store."""
    inject = scenario.inject(entry.inject)
    if inject is None:
        return standing
    truth = {**standing.truth, **dict(inject.becomes)}
    done = replace(
        standing, truth=truth, injected=(*standing.injected, inject.id), cues=(inject.shows,)
    )
    changed = tuple(finding for finding, _ in inject.becomes)
    for finding in changed:
        if finding in scenario.book.at_a_glance and can_be_told(scenario, done, finding):
            done = noticed(scenario, done, finding)
    return follow(scenario, done)


def what_is_seen(scenario: Scenario, standing: Standing, finding: FindingId) -> ValueId | None:
    """Return the value somebody sees who looks now; `None` where it cannot be told."""
    if not can_be_told(scenario, standing, finding):
        return None
    return standing.truth.get(finding)


def sign_of(scenario: Scenario, standing: Standing, finding: FindingId, saw: ValueId) -> str:
    """Return how a value looks to somebody who sees it now."""
    for seen in scenario.seen_as.get((finding, saw), ()):
        done = was_done(standing, seen.unless_done, ())
        if not done and is_true(scenario, seen.when, standing.truth):
            return seen.shows
    value = scenario.library.finding(standing.state.place.pathway, finding).value(saw)
    return f"{value.sign or value.label}." if value else ""


def due_injects(scenario: Scenario, standing: Standing, seconds: float) -> tuple[Inject, ...]:
    """Return what happens now. `seconds` count from the first cue."""
    return tuple(
        each
        for each in scenario.injects
        if each.id not in standing.injected
        and (each.after in standing.done if each.after else seconds >= (each.at or 0))
        and is_true(scenario, each.when, standing.truth)
    )


def _turned(scenario: Scenario, standing: Standing, act: ActId, number: int) -> Standing:
    """Return the standing with the truth as the act turns it, judged by what was true before."""
    truth = dict(standing.truth)
    cues: list[str] = []
    followed: list[Consequence] = []
    _becomes(truth, _known_by_doing(scenario, standing, act))
    times = standing.done.count(act)
    for place, turn in enumerate(scenario.turns_of(act).turns):
        if not _applies(scenario, standing, turn):
            continue
        if turn.percent < CERTAIN:
            draw = Random(f"{scenario.seed}/{act}/{times}/{place}").randrange(CERTAIN)
            if draw >= turn.percent:
                continue
        _becomes(truth, turn.becomes)
        cues += [turn.shows] if turn.shows else []
        if turn.lesson:
            followed.append(Consequence(number, act, turn.shows, turn.becomes, turn.lesson))
    return replace(
        standing,
        truth=truth,
        cues=tuple(cues),
        consequences=(*standing.consequences, *followed),
    )


def _applies(scenario: Scenario, standing: Standing, turn: Turn) -> bool:
    if not is_true(scenario, turn.when, standing.truth):
        return False
    if turn.unless.terms and is_true(scenario, turn.unless, standing.truth):
        return False
    if turn.unless_done and was_done(standing, turn.unless_done, turn.since):
        return False
    return not turn.once_done or was_done(standing, turn.once_done, turn.since)


def _known_by_doing(scenario: Scenario, standing: Standing, act: ActId) -> Settings:
    """Return what an act makes true because doing it tells it: a tip withdrawn is out."""
    known = scenario.library.words(standing.state.place.pathway).acts.get(act)
    effects = known.effects.known if known else ()
    return tuple((finding, values[0]) for finding, values in effects if len(values) == 1)


def _becomes(truth: dict[FindingId, ValueId], settings: Settings) -> None:
    truth.update((finding, value) for finding, value in settings if finding in truth)


def _replied(scenario: Scenario, standing: Standing, entry: Did) -> Standing:
    """Return the standing with every inject that the act answers, answered."""
    answered = {name for name, _, _ in standing.replied}
    for inject in scenario.injects:
        reply = _reply(inject, entry.act)
        if reply is None or inject.id not in standing.injected or inject.id in answered:
            continue
        standing = replace(
            standing,
            truth={**standing.truth, **dict(reply.becomes)},
            cues=(*standing.cues, *((reply.shows,) if reply.shows else ())),
            replied=(*standing.replied, (inject.id, entry.act, entry.at)),
        )
        for finding, _ in reply.becomes:
            if finding in scenario.book.at_a_glance:
                standing = noticed(scenario, standing, finding)
    return standing


def _reply(inject: Inject, act: ActId) -> Reply | None:
    return next((each for each in inject.replies if each.act == act), None)


def _moment(scenario: Scenario, standing: Standing, entry: Did) -> Moment:
    """Return the moment of an act. A wrong one counts as the act that rules speak of."""
    state, act, possible = standing.state, entry.act, standing.state.possible
    harm = scenario.harms.get(act)
    if harm is not None and harm.counts_as is not None:
        possible = _with_what_is_in_the_hand(scenario, standing, act)
        act = harm.counts_as
    return Moment(state.place, possible, state.last_seen, act=act, by=entry.who)


def _with_what_is_in_the_hand(scenario: Scenario, standing: Standing, act: ActId) -> int:
    """Return what is known, and of the kit what the act itself tells: which lens it is."""
    possible, pathway = standing.state.possible, standing.state.place.pathway
    for finding, values in scenario.library.words(pathway).acts[act].effects.known:
        known = layout_of(scenario.library).field(pathway, finding)
        if known.finding.about is About.KIT:
            possible = possible & ~known.every | known.mask(values)
    return possible


def _event(scenario: Scenario, standing: Standing, entry: Did | Looked, number: int) -> Event:
    state, sign = standing.state, ""
    if isinstance(entry, Looked) and entry.saw is not None:
        sign = sign_of(scenario, standing, entry.finding, entry.saw)
    return Event(entry, number, standing.truth, state.possible, state.last_seen, sign)
