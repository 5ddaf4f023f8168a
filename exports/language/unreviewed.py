"""What a sheet has to say of the language it is printed in."""

from __future__ import annotations

from chamberwise.engine.language.speaking import spoken


def unreviewed_language() -> str:
    """Return what the language that is spoken calls itself, where no clinician has reviewed it."""
    return "" if spoken().is_reviewed else spoken().own_title
