"""What a library says of itself where its texts are shown in another language."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from chamberwise.engine.model.step import PathwayId


@dataclass(frozen=True, slots=True)
class TranslationApproval:
    """Who stands for a translation, each of its files by name, and the day of the last of them."""

    by: tuple[str, ...]
    on: date


@dataclass(frozen=True, slots=True)
class Translation:
    """The language of the texts, and by pathway how many there are and how many stand in English.

    Counted are the texts of a pathway, of those it hands over to, and of the shared words they use.
    """

    language: str
    """As ISO 639-1 has it."""
    texts: Mapping[PathwayId, int]
    in_english: Mapping[PathwayId, int]
    approved: Mapping[PathwayId, TranslationApproval] = field(default_factory=dict)
    """The pathways of which all that is shown was approved in this language too."""
    sources: Mapping[PathwayId, str] = field(default_factory=dict)
    """The digests of what they say in English."""
    approved_in_english: frozenset[PathwayId] = frozenset()
