"""The problems a file can have before its meaning is looked at."""

from __future__ import annotations

from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Severity

ERROR = Severity.ERROR

UNREADABLE = Code(
    "unreadable-file",
    ERROR,
    "The file cannot be opened",
    "Nothing in it can be checked.",
)
TOO_LARGE = Code(
    "too-large",
    ERROR,
    "The file is larger than any pathway",
    "A file this large is a mistake or an attack; reading it could stop the machine.",
)
NOT_TEXT = Code(
    "not-text",
    ERROR,
    "The file is not UTF-8 text",
    "In another encoding, letters and figures can turn into other letters and figures.",
)
HIDDEN_CHARACTER = Code(
    "hidden-character",
    ERROR,
    "A character that cannot be seen",
    "What people see and what is read would differ; a dose or a side could turn into another.",
)
MERGE_CONFLICT = Code(
    "merge-conflict",
    ERROR,
    "Two versions stand in one file",
    "Nobody has decided which version is right, so neither may be followed.",
)
SYNTAX = Code(
    "yaml-syntax",
    ERROR,
    "The file is not well-formed YAML",
    "From here on nothing can be read for certain.",
)
TOO_MANY = Code(
    "too-many-problems",
    ERROR,
    "More problems than are listed",
    "So many have one cause; what follows is not looked at until it is found.",
)
SEVERAL_DOCUMENTS = Code(
    "several-documents",
    ERROR,
    "More than one document in a file",
    "Only one can be the pathway; the other would be overlooked.",
)
EMPTY = Code("empty-file", ERROR, "The file holds nothing", "There is nothing to check or walk.")
ALIAS = Code(
    "alias-refused",
    ERROR,
    "An anchor, alias or tag",
    "What is read here would stand elsewhere; a few such lines can also grow without limit.",
)
TOO_DEEP = Code(
    "too-deep",
    ERROR,
    "Nested deeper than a pathway ever is",
    "Nesting this deep is a mistake in the layout, or made to stop the reader.",
)
DUPLICATE_KEY = Code(
    "duplicate-key",
    ERROR,
    "The same key twice",
    "One of the two would be dropped without a word.",
)
UNKNOWN_KEY = Code(
    "unknown-key",
    ERROR,
    "A key the format does not have",
    "What stands under it would never be shown or checked.",
)
MISSING_KEY = Code(
    "missing-key",
    ERROR,
    "A required key is left out",
    "Without it the step or the file is incomplete.",
)
WRONG_KIND = Code(
    "wrong-kind",
    ERROR,
    "Text, list or mapping where another is due",
    "The text would be read as something the author does not mean.",
)
WRONG_VALUE = Code(
    "wrong-value",
    ERROR,
    "A value that cannot stand here",
    "A value read by guess can turn one dose, date or name into another.",
)
TEXT_CUT = Code(
    "text-cut",
    ERROR,
    "A text cut short by #",
    "From the # on nothing is read: half a sentence, or a dose without its limit, is shown.",
)
STEP_KIND = Code(
    "step-kind",
    ERROR,
    "A step that is no one kind of step",
    "A step asks, does, branches, hands over or ends, so that the team knows what is due.",
)
FILE_NAME = Code(
    "file-name",
    ERROR,
    "The file does not carry the pathway's name",
    "Handovers and printed sheets find a pathway by its name.",
)
