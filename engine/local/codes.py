"""The problems that a local sheet can have with what lies below it."""

from __future__ import annotations

from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Severity

NO_BASE = Code(
    "no-base",
    Severity.ERROR,
    "A local sheet over nothing",
    "Without the pathway below it nothing of the sheet can be walked, proved or printed.",
)
BASE_CHANGED = Code(
    "base-changed",
    Severity.ERROR,
    "What lies below the sheet has changed",
    "Nobody of the unit has looked whether its sheet still fits what stands there now.",
)
STALE = Code(
    "stale-expectation",
    Severity.ERROR,
    "The sheet expects something else than stands there",
    "Carried out blindly, the change could undo what was put right below, or change another thing.",
)
NO_SUCH_PLACE = Code(
    "no-such-place",
    Severity.ERROR,
    "A place that is not there",
    "The change would fall away without a word.",
)
CHANGED_TWICE = Code(
    "changed-twice",
    Severity.ERROR,
    "Two changes of one thing",
    "Only one of the two could hold, and nobody decided which.",
)
NOT_FOR_A_SHEET = Code(
    "not-for-a-sheet",
    Severity.ERROR,
    "What a local sheet may not change",
    "House rules speak of shared findings and acts; bent in one unit, they would guard nothing.",
)
MORE_THAN_WORDING = Code(
    "more-than-wording",
    Severity.ERROR,
    "A wording that changes a figure or turns a sentence round",
    "It would pass for a matter of taste, and a dose, a limit or a prohibition has changed.",
)
NAMES_NOTHING = Code(
    "names-nothing",
    Severity.ERROR,
    "A name that nothing has here",
    "What stands under it would never be shown to the team.",
)
LEAVES_OUT = Code(
    "leaves-out",
    Severity.WARNING,
    "A change that leaves out what guarded the step",
    "A safety rule sees acts, warnings and doubts, not words; what is gone it can no longer guard.",
)
