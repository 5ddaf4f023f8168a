"""The problems that a list or a file of stock can have, beside those of any file."""

from __future__ import annotations

from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_

IDENTITY = Code(
    "identity-in-a-list",
    Severity.ERROR,
    N_("A list holds something of a patient's identity"),
    N_("A brief hangs on a clipboard and is thrown away; nobody may be found by it."),
)
COLUMN = Code(
    "unknown-column",
    Severity.ERROR,
    N_("A column that a list does not have"),
    N_("What stands under it would be left out in silence."),
)
ROW = Code(
    "row-not-understood",
    Severity.ERROR,
    N_("A row that is not one case"),
    N_("Its figures could belong to another column."),
)
FIGURE = Code(
    "figure-refused",
    Severity.ERROR,
    N_("A figure that cannot be worked with"),
    N_("A lens on the shelf that is misread is a lens that is missing on the day."),
)
