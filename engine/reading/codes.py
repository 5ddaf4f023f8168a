"""The problems a file can have before its meaning is looked at."""

from __future__ import annotations

from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_

ERROR = Severity.ERROR

UNREADABLE = Code(
    "unreadable-file",
    ERROR,
    N_("The file cannot be opened"),
    N_("Nothing in it can be checked."),
)
TOO_LARGE = Code(
    "too-large",
    ERROR,
    N_("The file is larger than any pathway"),
    N_("A file this large is a mistake or an attack; reading it could stop the machine."),
)
NOT_TEXT = Code(
    "not-text",
    ERROR,
    N_("The file is not UTF-8 text"),
    N_("In another encoding, letters and figures can turn into other letters and figures."),
)
HIDDEN_CHARACTER = Code(
    "hidden-character",
    ERROR,
    N_("A character that cannot be seen"),
    N_("What people see and what is read would differ; a dose or a side could turn into another."),
)
MERGE_CONFLICT = Code(
    "merge-conflict",
    ERROR,
    N_("Two versions stand in one file"),
    N_("Nobody has decided which version is right, so neither may be followed."),
)
SYNTAX = Code(
    "yaml-syntax",
    ERROR,
    N_("The file is not well-formed YAML"),
    N_("From here on nothing can be read for certain."),
)
TOO_MANY = Code(
    "too-many-problems",
    ERROR,
    N_("More problems than are listed"),
    N_("So many have one cause; what follows is not looked at until it is found."),
)
SEVERAL_DOCUMENTS = Code(
    "several-documents",
    ERROR,
    N_("More than one document in a file"),
    N_("Only one can be the pathway; the other would be overlooked."),
)
EMPTY = Code(
    "empty-file", ERROR, N_("The file holds nothing"), N_("There is nothing to check or walk.")
)
ALIAS = Code(
    "alias-refused",
    ERROR,
    N_("An anchor, alias or tag"),
    N_("What is read here would stand elsewhere; a few such lines can also grow without limit."),
)
TOO_DEEP = Code(
    "too-deep",
    ERROR,
    N_("Nested deeper than a pathway ever is"),
    N_("Nesting this deep is a mistake in the layout, or made to stop the reader."),
)
DUPLICATE_KEY = Code(
    "duplicate-key",
    ERROR,
    N_("The same key twice"),
    N_("One of the two would be dropped without a word."),
)
UNKNOWN_KEY = Code(
    "unknown-key",
    ERROR,
    N_("A key the format does not have"),
    N_("What stands under it would never be shown or checked."),
)
MISSING_KEY = Code(
    "missing-key",
    ERROR,
    N_("A required key is left out"),
    N_("Without it the step or the file is incomplete."),
)
WRONG_KIND = Code(
    "wrong-kind",
    ERROR,
    N_("Text, list or mapping where another is due"),
    N_("The text would be read as something the author does not mean."),
)
WRONG_VALUE = Code(
    "wrong-value",
    ERROR,
    N_("A value that cannot stand here"),
    N_("A value read by guess can turn one dose, date or name into another."),
)
TEXT_CUT = Code(
    "text-cut",
    ERROR,
    N_("A text cut short by #"),
    N_("From the # on nothing is read: half a sentence, or a dose without its limit, is shown."),
)
STEP_KIND = Code(
    "step-kind",
    ERROR,
    N_("A step that is no one kind of step"),
    N_("A step asks, does, branches, hands over or ends, so that the team knows what is due."),
)
FILE_NAME = Code(
    "file-name",
    ERROR,
    N_("The file does not carry the pathway's name"),
    N_("Handovers and printed sheets find a pathway by its name."),
)
