"""What a library says of itself where its texts are shown in another language."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from chamberwise.engine.model.step import PathwayId


@dataclass(frozen=True, slots=True)
class Translation:
    """The language of the texts, and by pathway how many there are and how many stand in English.

    Counted are the texts of a pathway, of those it hands over to, and of the shared words they use.
    """

    language: str
    """As ISO 639-1 has it."""
    is_reviewed: bool
    """Whether a clinician stands by name for every file that was taken."""
    texts: Mapping[PathwayId, int]
    in_english: Mapping[PathwayId, int]
