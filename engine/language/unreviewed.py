"""What is said of texts in a language that no clinician has reviewed."""

from __future__ import annotations

from chamberwise.engine.language.languages import Language
from chamberwise.engine.language.texts import gettext as _


def unreviewed_texts(language: Language) -> str:
    """Return, as a sentence, that no clinician has reviewed some texts in a language."""
    told = _("{language}: a translation that no clinician has reviewed.")
    return told.format(language=language.own_title)
