"""The languages there are, and how far each has been read by somebody who works in it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

DOMAIN = "chamberwise"
CATALOGUES = Path(__file__).parent / "catalogues"
"""Holds `CODE/LC_MESSAGES/chamberwise.po`, and the `.mo` made of it, as gettext wants them."""


@dataclass(frozen=True, slots=True)
class Language:
    """A language: its ISO 639-1 code, and what it and its speakers call it."""

    code: str
    title: str
    own_title: str
    is_reviewed: bool
    """Whether a clinician who works in the language has read what is shown in it."""


ENGLISH = Language("en", "English", "English", is_reviewed=True)
GERMAN = Language("de", "German", "Deutsch", is_reviewed=False)
LANGUAGES = {language.code: language for language in (ENGLISH, GERMAN)}
