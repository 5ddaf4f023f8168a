"""Groups of sheets and of texts that rules speak of."""

from __future__ import annotations

from chamberwise.exports.paper.sheet import Role
from chamberwise.exports.printing.kind import EVERY_KIND, AnyKind, Kind, ListKind, PaperKind

ON_THE_WALL: frozenset[AnyKind] = frozenset({Kind.WALL_CHART})
IN_THE_HAND = EVERY_KIND - ON_THE_WALL
DRAWN: frozenset[AnyKind] = frozenset({Kind.WALL_CHART, Kind.FULL, Kind.POCKET_CARD})
"""Sheets that draw a flow."""
TABLES: frozenset[AnyKind] = frozenset({Kind.KIT_LIST, Kind.CASE_TABLE, ListKind.BRIEF})
ACROSS_PAGES: frozenset[AnyKind] = frozenset({Kind.WALL_CHART, Kind.FULL})
"""Sheets on which a step is drawn once, on whichever page."""
UNCONTROLLED: frozenset[AnyKind] = frozenset({PaperKind.DEBRIEF, PaperKind.RECORD})
"""Papers of runs: nobody approves them, and without edition or stamp they never go out of date."""
CONTROLLED = EVERY_KIND - UNCONTROLLED
TELLING: frozenset[AnyKind] = frozenset(PaperKind)
"""Papers that tell of what was done or changed: read at a table, with nothing on them to act on."""
QUOTING: frozenset[AnyKind] = frozenset({PaperKind.DEBRIEF, PaperKind.COMPARISON})
"""Papers that show words as somebody typed them, or as an old version had them."""

TO_DO = (Role.STEP, Role.LINE)
CONTENT = (Role.STEP, Role.LINE, Role.QUESTION, Role.ANSWER, Role.CAUTION, Role.NOTE)
RUNNING = (*CONTENT, Role.TITLE, Role.HEADING)
"""All that is read as language: not numbers, not the foot, not a mark across the page."""
