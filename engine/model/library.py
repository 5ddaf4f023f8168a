"""A library: pathways and the vocabulary they share."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from chamberwise.engine.model.local import Local
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import PathwayId, Step, StepId
from chamberwise.engine.model.translation import Translation
from chamberwise.engine.model.words import Finding, FindingId, Words


class Place(NamedTuple):
    """One step of one pathway."""

    pathway: PathwayId
    step: StepId


@dataclass(frozen=True, eq=False)
class Library:
    """Pathways by name, in reading order, over one shared vocabulary."""

    shared: Words
    pathways: Mapping[PathwayId, Pathway]
    local: Local | None = None
    """The unit's sheet over some of them."""
    translation: Translation | None = None
    """Said where its texts are shown in another language than they were written in."""

    @cached_property
    def _words(self) -> dict[PathwayId, Words]:
        return {name: pathway.words.over(self.shared) for name, pathway in self.pathways.items()}

    def local_to(self, pathway: PathwayId) -> Local | None:
        """Return the unit's sheet over a pathway, if there is one."""
        return self.local if self.local and pathway in self.local.covers else None

    def words(self, pathway: PathwayId) -> Words:
        """Return every word a pathway may use: its own, then the shared ones."""
        return self._words[pathway]

    def step(self, place: Place) -> Step:
        """Return the step at a place."""
        return self.pathways[place.pathway].steps[place.step]

    def finding(self, pathway: PathwayId, finding: FindingId) -> Finding:
        """Return a finding as a pathway names it."""
        return self._words[pathway].findings[finding]
