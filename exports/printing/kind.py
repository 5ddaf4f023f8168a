"""The kinds of sheet. Nothing here loads what prints them."""

from __future__ import annotations

from enum import StrEnum
from typing import TypeAlias


class Kind(StrEnum):
    """A kind of sheet, by the word that asks for it."""

    WALL_CHART = "wall-chart"
    POCKET_CARD = "pocket-card"
    ROLE_CARDS = "role-cards"
    KIT_LIST = "kit-list"
    SCRIPT = "script"
    CASE_TABLE = "case-table"
    FULL = "full"

    @property
    def words(self) -> str:
        """How the kind is named in a sentence."""
        return "full pathway" if self is Kind.FULL else self.value.replace("-", " ")


class ListKind(StrEnum):
    """A kind of sheet that is of a list for the day and of no pathway."""

    BRIEF = "brief"

    @property
    def words(self) -> str:
        """How the kind is named in a sentence."""
        return self.value


AnyKind: TypeAlias = Kind | ListKind
EVERY_KIND: frozenset[AnyKind] = frozenset((*Kind, *ListKind))
