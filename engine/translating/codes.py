"""The problems that a translation can have with the texts it is made of."""

from __future__ import annotations

from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_

NO_SUCH_LANGUAGE = Code(
    "no-such-language",
    Severity.ERROR,
    N_("A language that nothing is shown in"),
    N_("Nobody could ask for these texts, and whoever wrote them would believe they are shown."),
)
OF_NOTHING = Code(
    "translation-of-nothing",
    Severity.ERROR,
    N_("A translation of something that is not there"),
    N_("None of its texts would ever be shown."),
)
NO_SUCH_TEXT = Code(
    "no-such-text",
    Severity.WARNING,
    N_("A translation of a text that is not there"),
    N_("It is shown nowhere, and the text it was meant for stands in English."),
)
TWICE = Code(
    "translated-twice",
    Severity.ERROR,
    N_("Two translations of one text"),
    N_("Only one of the two is shown, and nobody decided which."),
)
STALE = Code(
    "stale-translation",
    Severity.WARNING,
    N_("The text has changed since it was translated"),
    N_("The translation may say what was put right since; the text is shown in English."),
)
NOT_ITS_SOURCE = Code(
    "not-its-source",
    Severity.WARNING,
    N_("The source that stands beside a translation is not the one its digest names"),
    N_("Whoever reads the two side by side compares with the wrong text."),
)
QUANTITY = Code(
    "quantity-differs",
    Severity.ERROR,
    N_("A translation with another dose, measure or time"),
    N_("A wrong dose looks as sure as a right one; the text is shown in English."),
)
FIGURE = Code(
    "figure-differs",
    Severity.WARNING,
    N_("A translation with another figure"),
    N_("A number may have been changed or lost; the text is shown in English until it is settled."),
)
NEGATION = Code(
    "negation-differs",
    Severity.WARNING,
    N_("A translation that says no more or less often than its source"),
    N_("A prohibition may have become an instruction; the text is shown in English until settled."),
)
LEFT_OVER = Code(
    "left-over",
    Severity.WARNING,
    N_("Something left in a translation that is not for the reader"),
    N_("It would be read aloud in theatre; the text is shown in English until it is put right."),
)
MISSING = Code(
    "missing-translations",
    Severity.NOTICE,
    N_("Texts without a translation"),
    N_("They are shown in English and marked."),
)
NOT_APPROVED = Code(
    "translation-not-approved",
    Severity.ERROR,
    N_("A translation approved by nobody who may"),
    N_("A team would follow it as approved, and nobody but its translator has read it."),
)
EDITED = Code(
    "translation-edited",
    Severity.ERROR,
    N_("Not the translation that was approved"),
    N_("Nobody stands for what was edited since; sheets in this language print as drafts."),
)
