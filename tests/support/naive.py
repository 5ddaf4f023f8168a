"""What a pathway means, written a second time and slowly: sets of values, dictionaries, lists.

Shares nothing with `engine.meaning` but the model; a branch is decided by trying every complete
picture of the eye that what is known leaves possible.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from itertools import product

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import (
    CANNOT_TELL,
    Action,
    Answer,
    Branch,
    Handover,
    Outcome,
    Question,
    Row,
)
from chamberwise.engine.model.words import Effects, Finding

Key = tuple[str, str]
"""The pathway that owns a finding (none: it is shared), and the finding."""
Place = tuple[str, str]


@dataclass
class Team:
    """A team on its way. `seen` holds what was last seen of stale findings."""

    library: Library
    place: Place
    possible: dict[Key, set[str]] = field(default_factory=dict)
    seen: dict[Key, set[str]] = field(default_factory=dict)
    entered: dict[Place, int] = field(default_factory=dict)
    back: list[Place] = field(default_factory=list)

    def snapshot(self) -> object:
        return (
            self.place,
            tuple((key, frozenset(values)) for key, values in sorted(self.possible.items())),
            tuple((key, frozenset(values)) for key, values in sorted(self.seen.items())),
            tuple(sorted(self.entered.items())),
            tuple(self.back),
        )

    def key(self, name: str) -> Key:
        pathway = self.place[0]
        own = self.library.pathways[pathway].words.findings
        return (pathway, name) if name in own else ("", name)

    def known(self, name: str) -> set[str]:
        return self.possible[self.key(name)]


def every_finding(library: Library) -> Iterator[tuple[Key, Finding]]:
    for name, shared in library.shared.findings.items():
        yield ("", name), shared
    for pathway in library.pathways.values():
        for name, own in pathway.words.findings.items():
            yield (pathway.id, name), own


def set_out(library: Library, pathway: str) -> Team:
    team = Team(library, (pathway, library.pathways[pathway].start))
    for key, found in every_finding(library):
        every = {value.id for value in found.values}
        chosen = found.choice.chosen if found.choice else None
        team.possible[key] = {chosen} if chosen else every
    _enter(team, team.place[1])
    _settle(team)
    return team


def offered(team: Team) -> list[str]:
    """Return the names of the moves there are."""
    step = team.library.pathways[team.place[0]].steps[team.place[1]]
    if isinstance(step, Action | Handover):
        return ["done"]
    if not isinstance(step, Question) or _known_answer(team, step):
        return []
    possible = team.known(step.ask)
    return [
        answer.id
        for answer in step.answers
        if answer.id == CANNOT_TELL or possible & set(answer.means)
    ]


def go(team: Team, move: str) -> None:
    step = team.library.pathways[team.place[0]].steps[team.place[1]]
    if isinstance(step, Question):
        answer = next(each for each in step.answers if each.id == move)
        if move != CANNOT_TELL:
            team.possible[team.key(step.ask)] &= set(answer.means)
            team.seen.pop(team.key(step.ask), None)
        _enter(team, answer.go_to)
    elif isinstance(step, Action):
        _act(team, step)
        _enter(team, step.go_to)
    elif isinstance(step, Handover):
        team.back = [*team.back, team.place] if step.on_return else []
        _forget_counts(team, step.to)
        team.place = (step.to, team.library.pathways[step.to].start)
        _enter(team, team.place[1])
    _settle(team)


def _act(team: Team, action: Action) -> None:
    for key, found in every_finding(team.library):
        if found.may_change_by_itself:
            _forget(team, key)
    acts = team.library.pathways[team.place[0]].words.acts
    for line in action.lines:
        done = acts.get(line.act or "") or team.library.shared.acts.get(line.act or "")
        if done:
            _apply(team, done.effects)
    _apply(team, action.effects)


def _apply(team: Team, effects: Effects) -> None:
    for name in effects.stale:
        _forget(team, team.key(name))
    for name, values in effects.known:
        team.possible[team.key(name)] = set(values)
        team.seen.pop(team.key(name), None)


def _forget(team: Team, key: Key) -> None:
    every = {value.id for value in dict(every_finding(team.library))[key].values}
    if team.possible[key] != every:
        team.seen[key] = team.possible[key]
        team.possible[key] = every


def _forget_counts(team: Team, pathway: str) -> None:
    team.entered = {place: times for place, times in team.entered.items() if place[0] != pathway}


def _enter(team: Team, target: str) -> None:
    left: list[str] = []
    while True:
        team.place = (team.place[0], target)
        bound = team.library.pathways[team.place[0]].steps[target].bound
        if bound is None or target in left:
            return
        if team.entered.get(team.place, 0) < bound.at_most:
            team.entered[team.place] = team.entered.get(team.place, 0) + 1
            return
        left.append(target)
        target = bound.after_that


def _settle(team: Team) -> None:
    been = [team.snapshot()]
    while _pass_on(team):
        if team.snapshot() in been:
            return
        been.append(team.snapshot())


def _pass_on(team: Team) -> bool:
    """Go on by one step that needs no move; say whether there was one."""
    step = team.library.pathways[team.place[0]].steps[team.place[1]]
    target: str | None = None
    if isinstance(step, Question):
        answer = _known_answer(team, step)
        target = answer.go_to if answer else None
    elif isinstance(step, Branch):
        target = decided(team, step)
    elif isinstance(step, Outcome) and team.back:
        pathway, name = team.back[-1]
        handover = team.library.pathways[pathway].steps[name]
        assert isinstance(handover, Handover)
        target = dict(handover.on_return).get(step.id)
        if target:
            _forget_counts(team, team.place[0])
            team.place = team.back[-1]
            team.back = team.back[:-1]
    if target is None:
        return False
    _enter(team, target)
    return True


def _known_answer(team: Team, question: Question) -> Answer | None:
    possible = team.known(question.ask)
    every = {value.id for value in dict(every_finding(team.library))[team.key(question.ask)].values}
    if possible == every:
        return None
    return next((each for each in question.answers if possible <= set(each.means)), None)


def decided(team: Team, branch: Branch) -> str | None:
    """Return where a branch goes on: by what every complete picture, or some, makes of its rows."""
    pictures = list(complete_pictures(team, branch))
    for each in branch.rows:
        if all(_holds(each, picture) for picture in pictures):
            return each.go_to
    if any(_holds(each, picture) for each in branch.rows for picture in pictures):
        return branch.not_known
    return branch.otherwise


def complete_pictures(team: Team, branch: Branch) -> Iterator[Mapping[str, str]]:
    """Yield every way in which all that a branch names could be."""
    names = sorted({name for each in branch.rows for name, _ in each.when.terms})
    for values in product(*(sorted(team.known(name)) for name in names)):
        yield dict(zip(names, values, strict=True))


def _holds(row: Row, picture: Mapping[str, str]) -> bool:
    return all(picture[name] in wanted for name, wanted in row.when.terms)
