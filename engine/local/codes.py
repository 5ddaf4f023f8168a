"""The problems that a local sheet can have with what lies below it."""

from __future__ import annotations

from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_

NO_BASE = Code(
    "no-base",
    Severity.ERROR,
    N_("A local sheet over nothing"),
    N_("Without the pathway below it nothing of the sheet can be walked, proved or printed."),
)
BASE_CHANGED = Code(
    "base-changed",
    Severity.ERROR,
    N_("What lies below the sheet has changed"),
    N_("Nobody of the unit has looked whether its sheet still fits what stands there now."),
)
STALE = Code(
    "stale-expectation",
    Severity.ERROR,
    N_("The sheet expects something else than stands there"),
    N_(
        "Carried out blindly, the change could undo what was put right below, or "
        "change another thing."
    ),
)
NO_SUCH_PLACE = Code(
    "no-such-place",
    Severity.ERROR,
    N_("A place that is not there"),
    N_("The change would fall away without a word."),
)
CHANGED_TWICE = Code(
    "changed-twice",
    Severity.ERROR,
    N_("Two changes of one thing"),
    N_("Only one of the two could hold, and nobody decided which."),
)
NOT_FOR_A_SHEET = Code(
    "not-for-a-sheet",
    Severity.ERROR,
    N_("What a local sheet may not change"),
    N_(
        "A wording touches what people read and nothing else; and house rules speak of shared "
        "findings and acts: bent in one unit, they would guard nothing."
    ),
)
MORE_THAN_WORDING = Code(
    "more-than-wording",
    Severity.ERROR,
    N_("A wording that changes a figure or turns a sentence round"),
    N_(
        "It would pass for a matter of taste, and a drug, a dose, a limit or a prohibition "
        "has changed."
    ),
)
NAMES_NOTHING = Code(
    "names-nothing",
    Severity.ERROR,
    N_("A name that nothing has here"),
    N_("What stands under it would never be shown to the team."),
)
LEAVES_OUT = Code(
    "leaves-out",
    Severity.WARNING,
    N_("A change that leaves out what guarded the step"),
    N_(
        "A safety rule sees acts, warnings and doubts, not words; what is gone it can "
        "no longer guard."
    ),
)
