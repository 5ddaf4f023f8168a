"""The kinds of sheet. Nothing here loads what prints them."""

from __future__ import annotations

from enum import StrEnum
from typing import TypeAlias

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _


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
        return _(_WORDS[self])


class ListKind(StrEnum):
    """A kind of sheet that is of a list for the day and of no pathway."""

    BRIEF = "brief"

    @property
    def words(self) -> str:
        """How the kind is named in a sentence."""
        return _(_WORDS[self])


class PaperKind(StrEnum):
    """A paper that tells of what people did or changed, and is no sheet of a pathway."""

    DEBRIEF = "debrief"
    RECORD = "record"
    COMPARISON = "comparison"

    @property
    def words(self) -> str:
        """How the kind is named in a sentence."""
        return _(_WORDS[self])


_WORDS: dict[StrEnum, str] = {
    Kind.WALL_CHART: N_("wall chart"),
    Kind.POCKET_CARD: N_("pocket card"),
    Kind.ROLE_CARDS: N_("role cards"),
    Kind.KIT_LIST: N_("kit list"),
    Kind.SCRIPT: N_("script"),
    Kind.CASE_TABLE: N_("case table"),
    Kind.FULL: N_("full pathway"),
    ListKind.BRIEF: N_("brief"),
    PaperKind.DEBRIEF: N_("debrief"),
    PaperKind.RECORD: N_("record of drills"),
    PaperKind.COMPARISON: N_("what changes"),
}

AnyKind: TypeAlias = Kind | ListKind | PaperKind
EVERY_KIND: frozenset[AnyKind] = frozenset((*Kind, *ListKind, *PaperKind))
