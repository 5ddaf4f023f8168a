"""The form of an approval, alike on a pathway and on a local sheet."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.reading.shapes import DATE, DIGEST, TEXT, Entries, Key

APPROVAL_KEYS = {
    "approved by": Key(TEXT, N_("Who approved it")),
    "approved on": Key(DATE, N_("When it was approved")),
    "approved content": Key(DIGEST, N_("The digest of what was approved")),
    "approved parts": Key(Entries(DIGEST), N_("The digests of its parts, to tell what changed")),
}
