"""The problems that a translation can have with the texts it is made of."""

from __future__ import annotations

from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Severity

NO_SUCH_LANGUAGE = Code(
    "no-such-language",
    Severity.ERROR,
    "A language that nothing is shown in",
    "Nobody could ask for these texts, and whoever wrote them would believe they are shown.",
)
OF_NOTHING = Code(
    "translation-of-nothing",
    Severity.ERROR,
    "A translation of something that is not there",
    "None of its texts would ever be shown.",
)
NO_SUCH_TEXT = Code(
    "no-such-text",
    Severity.WARNING,
    "A translation of a text that is not there",
    "It is shown nowhere, and the text it was meant for stands in English.",
)
TWICE = Code(
    "translated-twice",
    Severity.ERROR,
    "Two translations of one text",
    "Only one of the two is shown, and nobody decided which.",
)
STALE = Code(
    "stale-translation",
    Severity.WARNING,
    "The text has changed since it was translated",
    "The translation may say what was put right since; the text is shown in English.",
)
NOT_ITS_SOURCE = Code(
    "not-its-source",
    Severity.WARNING,
    "The source that stands beside a translation is not the one its digest names",
    "Whoever reads the two side by side compares with the wrong text.",
)
QUANTITY = Code(
    "quantity-differs",
    Severity.ERROR,
    "A translation with another dose, measure or time",
    "A wrong dose looks as sure as a right one; the text is shown in English.",
)
FIGURE = Code(
    "figure-differs",
    Severity.WARNING,
    "A translation with another figure",
    "A number may have been changed or lost; the text is shown in English until it is settled.",
)
NEGATION = Code(
    "negation-differs",
    Severity.WARNING,
    "A translation that says no more or less often than its source",
    "A prohibition may have become an instruction; the text is shown in English until settled.",
)
LEFT_OVER = Code(
    "left-over",
    Severity.WARNING,
    "Something left in a translation that is not for the reader",
    "It would be read aloud in theatre; the text is shown in English until it is put right.",
)
MISSING = Code(
    "missing-translations",
    Severity.NOTICE,
    "Texts without a translation",
    "They are shown in English and marked.",
)
