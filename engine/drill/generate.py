"""From a book, a seed and perhaps a name to one scenario. The same seed draws the same one.

The stage is drawn by published frequencies, spread so that seeds in a row differ; the truth avoids
what the pathway calls impossible.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from random import Random

from chamberwise.engine.drill.scenario import Scenario, is_true
from chamberwise.engine.drill.spreading import in_turn, spread, weighted
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.drill import (
    Authored,
    DrillBook,
    Inject,
    Opening,
    Phrases,
    TruthBook,
    Weights,
)
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.words import Act, ActId, Finding, FindingId, ValueId, Words

DRAWN = "drawn"
"""The name of a scenario that nobody wrote by hand."""

TRIES = 200
LEAD_IN = (4, 14)
"""Seconds before the first cue, and between a decoy and what follows."""

HOW_MANY_INJECTS = (0, 1, 1, 2, 2)
"""Each as likely as any other: a drill in which nothing happens meanwhile is the exception."""


class NoScenarioError(ValueError):
    """There is no such scenario, or none can be drawn; `args[0]` says why."""


def drill_library(library: Library, truth: TruthBook, book: DrillBook) -> Library:
    """Return the library with the acts that only drills know."""
    shared = library.shared
    replies = {
        reply.act: Act(reply.act, reply.title)
        for inject in book.injects
        for reply in inject.replies
        if reply.title
    }
    return Library(
        Words(
            shared.findings,
            {**replies, **truth.acts, **shared.acts},
            shared.duties,
            shared.kit,
            shared.sources,
            shared.rules,
        ),
        library.pathways,
    )


def generate(
    library: Library,
    book: DrillBook,
    truth: TruthBook,
    phrases: Phrases,
    seed: int,
    name: str | None = None,
) -> Scenario:
    """Return the scenario of a seed, or of a name and a seed. Raises `NoScenarioError`.

    `library` is one that `drill_library` made.
    """
    random = _random(book, name, seed)
    authored = _authored(book, name)
    opening, at = _opening(book, authored, seed)
    settled = dict(opening.known) | dict(authored.truth if authored else ())
    decoys, first_cue = _before_the_cue(book, authored, random)
    brief = _brief(book, authored, seed)
    cues = authored.cues if authored and authored.cues else opening.cues
    cue = cues[int(at * len(cues))]
    injects = _injects(book, authored, random)
    library = _called(library, opening.calls)
    for drawn in _truths(library, book, opening, settled, random):
        made = Scenario(
            name=authored.id if authored else DRAWN,
            title=authored.title if authored else "",
            seed=seed,
            library=library,
            pathway=book.pathway,
            book=book,
            opening=opening,
            brief=brief,
            so_far=authored.so_far if authored and authored.so_far else opening.so_far,
            truth=drawn,
            known=tuple(finding for finding, _value in opening.known),
            cue=cue,
            first_cue=first_cue,
            decoys=decoys,
            injects=injects,
            ends_at=authored.ends_at if authored and authored.ends_at else book.ends_at,
            lasts=authored.lasts if authored and authored.lasts else book.lasts,
            begins_at=authored.begins_at if authored else None,
            in_truth=truth.in_truth,
            harms=truth.harms,
            phrases=phrases,
            seen_as=truth.seen_as,
        )
        if not _is_impossible(made):
            return made
    raise NoScenarioError(
        _("{tries} draws from `{opening}` gave nothing that can be.").format(
            tries=TRIES, opening=opening.id
        )
    )


@lru_cache(maxsize=16)
def _called(library: Library, calls: tuple[tuple[ActId, str], ...]) -> Library:
    """Return the library with acts called as they are at this stage."""
    shared = library.shared
    renamed = {
        act: replace(shared.acts[act], title=title) for act, title in calls if act in shared.acts
    }
    if not renamed:
        return library
    return Library(replace(shared, acts={**shared.acts, **renamed}), library.pathways)


def opening_of(book: DrillBook, seed: int) -> Opening:
    """Return where the drill drawn from a seed begins."""
    return _opening(book, None, seed)[0]


def _random(book: DrillBook, name: str | None, seed: int) -> Random:
    return Random(f"{book.pathway}/{name or DRAWN}/{seed}")


def _authored(book: DrillBook, name: str | None) -> Authored | None:
    if name in (None, DRAWN):
        return None
    found = next((each for each in book.scenarios if each.id == name), None)
    if found is None:
        known = ", ".join(each.id for each in book.scenarios) or "none"
        raise NoScenarioError(
            _("There is no scenario `{name}`. Written by hand: {known}.").format(
                name=name, known=known
            )
        )
    return found


def _opening(book: DrillBook, authored: Authored | None, seed: int) -> tuple[Opening, float]:
    """Return where a drill begins, and a number from 0 to below 1 that its cue is drawn by."""
    at = spread(seed, f"{book.pathway}/opening")
    if authored is not None:
        found = next((each for each in book.openings if each.id == authored.opening), None)
        if found is None:
            raise NoScenarioError(
                _("There is no opening `{opening}`.").format(opening=authored.opening)
            )
        return found, at
    place, within = weighted([each.weight for each in book.openings], at)
    return book.openings[place], within


def _truths(
    library: Library,
    book: DrillBook,
    opening: Opening,
    settled: Mapping[FindingId, ValueId],
    random: Random,
) -> Iterator[dict[FindingId, ValueId]]:
    weights = {**dict(book.truth), **dict(opening.truth)}
    findings = library.words(book.pathway).findings.values()
    for _draw in range(TRIES):
        yield {
            each.id: settled.get(each.id) or _value(each, weights.get(each.id), random)
            for each in findings
        }


def _value(finding: Finding, weights: Weights | None, random: Random) -> ValueId:
    if weights:
        return random.choices(
            [value for value, _weight in weights], [each for _value, each in weights]
        )[0]
    if finding.choice:
        return finding.choice.chosen or finding.choice.suggested or finding.values[0].id
    return finding.values[0].id


def _before_the_cue(
    book: DrillBook, authored: Authored | None, random: Random
) -> tuple[tuple[tuple[int, str], ...], int]:
    texts: Sequence[str]
    if authored and authored.decoys is not None:
        texts = authored.decoys
    else:
        most = min(2, len(book.decoys))
        texts = random.sample(book.decoys, random.randint(0, most))
    at, decoys = 0, []
    for text in texts:
        at += random.randint(*LEAD_IN)
        decoys.append((at, text))
    return tuple(decoys), at + random.randint(*LEAD_IN)


def _injects(book: DrillBook, authored: Authored | None, random: Random) -> tuple[Inject, ...]:
    if authored and authored.injects is not None:
        return tuple(each for each in book.injects if each.id in authored.injects)
    few = min(random.choice(HOW_MANY_INJECTS), len(book.injects))
    drawn = random.sample(range(len(book.injects)), few)
    return tuple(book.injects[place] for place in sorted(drawn))


def _brief(book: DrillBook, authored: Authored | None, seed: int) -> tuple[str, ...]:
    if authored and authored.brief:
        return authored.brief
    return tuple(
        in_turn(texts, seed, f"{book.pathway}/{name}")
        for name, texts in book.brief.items()
        if texts
    )


def _is_impossible(scenario: Scenario) -> bool:
    cases = scenario.library.pathways[scenario.pathway].cases
    return cases is not None and any(
        is_true(scenario, each.when, scenario.truth) for each in cases.impossible
    )
