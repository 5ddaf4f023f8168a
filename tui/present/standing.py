"""What stands at the foot of every screen: what this is for, and how far its language is read."""

from __future__ import annotations

from chamberwise.engine.language.speaking import spoken
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.record.standing import STANDING


def standing() -> str:
    """Return the standing line, with a remark where no clinician has reviewed the language."""
    if spoken().is_reviewed:
        return _(STANDING)
    return " ".join([_(STANDING), _("Translation not clinically reviewed.")])
