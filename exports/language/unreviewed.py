"""What a sheet has to say of the language it is printed in."""

from __future__ import annotations

from chamberwise.engine.language.speaking import spoken
from chamberwise.engine.language.texts import gettext as _


def unreviewed_language() -> str:
    """Return what the language that is spoken calls itself, where no clinician has reviewed it."""
    return "" if spoken().is_reviewed else spoken().own_title


def unreviewed_notice(language: str | None = None) -> str:
    """Return, as a sentence, that no clinician has reviewed a translation; nothing of English."""
    told = unreviewed_language() if language is None else language
    if not told:
        return ""
    return _("{language}: no clinician has reviewed this translation.").format(language=told)
