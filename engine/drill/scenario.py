"""One drill to be run: its brief, its cues, and the truth that nobody sees."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from chamberwise.engine.meaning.condition import surely
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.drill import DrillBook, Harm, Inject, InTruth, Opening, Phrases, Seen
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId, StepId
from chamberwise.engine.model.words import ActId, FindingId, ValueId

NOTHING_IN_TRUTH = InTruth()


@dataclass(frozen=True, eq=False)
class Scenario:
    """What one drill is. `library` holds the acts that only drills know beside the others."""

    name: str
    title: str
    seed: int
    library: Library
    pathway: PathwayId
    book: DrillBook
    opening: Opening
    brief: tuple[str, ...]
    so_far: str
    truth: Mapping[FindingId, ValueId]
    known: tuple[FindingId, ...]
    """What the team knows of the truth from the start."""
    cue: str
    first_cue: int
    """Seconds from the beginning to the first cue; decoys are seen before it."""
    decoys: tuple[tuple[int, str], ...]
    injects: tuple[Inject, ...]
    ends_at: tuple[StepId, ...]
    lasts: int
    begins_at: StepId | None
    in_truth: Mapping[ActId, InTruth]
    harms: Mapping[ActId, Harm]
    phrases: Phrases = field(default_factory=Phrases)
    seen_as: Mapping[tuple[FindingId, ValueId], tuple[Seen, ...]] = field(default_factory=dict)
    typed_in: Library | None = None
    """The library in the language in which what is typed is understood, where that is another."""

    def turns_of(self, act: ActId) -> InTruth:
        """Return what an act does to the truth."""
        return self.in_truth.get(act, NOTHING_IN_TRUTH)

    @cached_property
    def renewed_by(self) -> Mapping[ActId, frozenset[ActId]]:
        """By act, the acts after which it has to be done anew to count."""
        found: dict[ActId, frozenset[ActId]] = {}
        for each in self.in_truth.values():
            for turn in each.turns:
                for act in (*turn.unless_done, *turn.once_done):
                    found[act] = found.get(act, frozenset()) | frozenset(turn.since)
        return found

    def title_of(self, act: ActId) -> str:
        """Return what an act is called."""
        acts = self.library.words(self.pathway).acts
        return acts[act].title if act in acts else act.replace("-", " ")

    def inject(self, name: str) -> Inject | None:
        """Return an inject of the book by its name."""
        return next((each for each in self.book.injects if each.id == name), None)


def is_true(scenario: Scenario, condition: Condition, truth: Mapping[FindingId, ValueId]) -> bool:
    """Whether the truth satisfies a condition; one that says nothing is satisfied."""
    return surely(condition, as_bits(scenario, truth), layout_of(scenario.library), _at(scenario))


def as_bits(scenario: Scenario, truth: Mapping[FindingId, ValueId]) -> int:
    """Return the truth as knowledge that leaves nothing open."""
    layout, bits = layout_of(scenario.library), 0
    for field_ in layout.fields(_at(scenario)):
        bits |= field_.bits.get(truth.get(field_.finding.id, ""), field_.every)
    return bits


def _at(scenario: Scenario) -> PathwayId:
    return scenario.pathway
