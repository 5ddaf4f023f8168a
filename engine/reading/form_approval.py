"""The form of an approval, alike on a pathway and on a local sheet."""

from __future__ import annotations

from chamberwise.engine.reading.shapes import DATE, DIGEST, TEXT, Entries, Key

APPROVAL_KEYS = {
    "approved by": Key(TEXT, "Who approved it"),
    "approved on": Key(DATE, "When it was approved"),
    "approved content": Key(DIGEST, "The digest of what was approved"),
    "approved parts": Key(Entries(DIGEST), "The digests of its parts, to tell what changed"),
}
