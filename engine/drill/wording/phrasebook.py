"""Every way of saying every act and look of a drill, ready to be compared with what was typed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from math import log

from chamberwise.engine.drill.scenario import Scenario
from chamberwise.engine.drill.wording.fright import EXCLAIMED
from chamberwise.engine.drill.wording.opposites import THINGS, stands
from chamberwise.engine.drill.wording.spelling import Spelling, spelling_of
from chamberwise.engine.drill.wording.stems import stem
from chamberwise.engine.drill.wording.tokens import (
    KNOWN_ANYHOW,
    asks,
    tokens_of,
    words_of,
    written,
)
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Action, Question
from chamberwise.engine.model.words import ActId, FindingId
from chamberwise.engine.reading.digest import reached_by_handover


@dataclass(frozen=True, slots=True, order=True)
class Target:
    """What words may mean: an act, or a look for a finding."""

    act: ActId = ""
    finding: FindingId = ""


@dataclass(frozen=True, slots=True, eq=False)
class Phrase:
    """One way of saying a target, as stems. A negative phrase says it by what is not done."""

    target: Target
    tokens: frozenset[str]
    is_negative: bool
    is_question: bool
    tells: tuple[tuple[str, float], ...] = ()
    """Each stem and how much it tells."""
    weight: float = 0.0
    """What its stems tell together."""
    stands: int = 0
    """On which sides of the pairs of opposites it stands."""
    things: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True, eq=False)
class Phrasebook:
    """Phrases, how much each stem tells, and which acts are never right. Every book is its own."""

    phrases: tuple[Phrase, ...]
    weights: Mapping[str, float]
    triggers: tuple[frozenset[str], ...]
    stand_for: Mapping[str, str]
    harmful: frozenset[ActId]
    announce: Target
    """What says aloud what this is."""
    holding: Mapping[str, tuple[Phrase, ...]]
    """By stem, the phrases that hold it."""
    spelling: Spelling
    like: Mapping[str, frozenset[str]]
    """By stem, others that often mean the same."""
    used: Mapping[tuple[Target, bool], Mapping[str, float]]
    """By target, and whether its phrases deny: each stem and the share of phrases that hold it."""

    def words(self, text: str) -> list[str]:
        """Return the words of a typed text: spelt rightly, those that stand for others replaced."""
        return words_of(text, self.stand_for, self.spelling)

    def is_harmful(self, target: Target) -> bool:
        """Whether a target is an act that is never right."""
        return target.act in self.harmful


@lru_cache(maxsize=16)
def phrasebook_of(scenario: Scenario) -> Phrasebook:
    """Return the phrases of a scenario's acts and looks."""
    stand_for = scenario.phrases.words
    phrases = tuple(
        Phrase(target, tokens, is_negative, asks(words))
        for target, text in dict.fromkeys(_said(scenario))
        for words in [words_of(text, stand_for)]
        for tokens, is_negative in [tokens_of(words)]
        if tokens
    )
    weights = _weights(phrases)
    phrases = tuple(
        replace(
            each,
            tells=tuple((token, weights[token]) for token in sorted(each.tokens)),
            weight=sum(weights[token] for token in each.tokens),
            stands=stands(each.tokens),
            things=THINGS & each.tokens,
        )
        for each in phrases
    )
    triggers = tuple(
        tokens
        for text in scenario.book.triggers
        for tokens, _ in [tokens_of(words_of(text, stand_for))]
        if tokens
    )
    holding: dict[str, list[Phrase]] = {}
    for phrase in phrases:
        for token in phrase.tokens:
            holding.setdefault(token, []).append(phrase)
    harmful = frozenset(scenario.harms)
    held = {token: tuple(found) for token, found in holding.items()}
    announce = Target(act=scenario.book.announce)
    return Phrasebook(
        phrases,
        weights,
        triggers,
        stand_for,
        harmful,
        announce,
        held,
        spelling_of(_every_word(scenario)),
        _like(scenario.phrases.like),
        _used(phrases),
    )


def _every_word(scenario: Scenario) -> Iterator[str]:
    yield from KNOWN_ANYHOW
    yield from EXCLAIMED
    for key in scenario.phrases.words:
        yield from key.split("-")
    for group in scenario.phrases.like:
        yield from written(group)
    for text in scenario.book.triggers:
        yield from written(text)
    for _target, text in _said(scenario):
        yield from written(text)


def _like(groups: Iterable[str]) -> dict[str, frozenset[str]]:
    found: dict[str, set[str]] = {}
    for group in groups:
        stems = {stem(word) for word in written(group)}
        for each in stems:
            found.setdefault(each, set()).update(stems - {each})
    return {each: frozenset(others) for each, others in found.items()}


def _used(phrases: Iterable[Phrase]) -> dict[tuple[Target, bool], dict[str, float]]:
    counts: dict[tuple[Target, bool], Counter[str]] = {}
    totals: Counter[tuple[Target, bool]] = Counter()
    for phrase in phrases:
        key = (phrase.target, phrase.is_negative)
        counts.setdefault(key, Counter()).update(phrase.tokens)
        totals[key] += 1
    return {
        key: {token: held / totals[key] for token, held in found.items()}
        for key, found in counts.items()
    }


def _said(scenario: Scenario) -> Iterator[tuple[Target, str]]:
    said, announce = scenario.phrases, Target(act=scenario.book.announce)
    for text in scenario.book.triggers:
        yield announce, text
    acts = _library(scenario).words(scenario.pathway).acts
    for act in _acts(scenario):
        if act in acts:
            yield Target(act=act), acts[act].title
        for text in said.acts.get(act, ()):
            yield Target(act=act), text
    for inject in scenario.book.injects:
        for reply in inject.replies:
            for text in reply.said_as:
                yield Target(act=reply.act), text
    for finding, text in _asked(scenario):
        yield Target(finding=finding), text
        for other in said.looks.get(finding, ()):
            yield Target(finding=finding), other


def _library(scenario: Scenario) -> Library:
    """Return the library whose titles are ways of saying: one language alone is understood."""
    return scenario.typed_in or scenario.library


def _acts(scenario: Scenario) -> Iterable[ActId]:
    library = _library(scenario)
    found = [*scenario.harms, *scenario.in_truth, *scenario.phrases.acts]
    found += [reply.act for inject in scenario.book.injects for reply in inject.replies]
    for pathway in reached_by_handover(library, scenario.pathway):
        for step in library.pathways[pathway].steps.values():
            if isinstance(step, Action):
                found += [line.act for line in step.lines if line.act]
    return dict.fromkeys(found)


def _asked(scenario: Scenario) -> Iterator[tuple[FindingId, str]]:
    library = _library(scenario)
    for pathway in reached_by_handover(library, scenario.pathway):
        for step in library.pathways[pathway].steps.values():
            if isinstance(step, Question):
                yield step.ask, step.question


def _weights(phrases: Iterable[Phrase]) -> dict[str, float]:
    """Return how much each stem tells: one that few targets use tells more."""
    of: dict[str, set[Target]] = {}
    targets = set()
    for phrase in phrases:
        targets.add(phrase.target)
        for token in phrase.tokens:
            of.setdefault(token, set()).add(phrase.target)
    return {token: log(1 + len(targets) / len(found)) for token, found in of.items()}
