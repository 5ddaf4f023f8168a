"""Is the file what a printer and a screen reader need."""

from __future__ import annotations

from chamberwise.exports.audit.rule import Rule
from chamberwise.exports.audit.rules.printing import (
    fonts_embedded,
    margins,
    page_size,
    scale_bar,
    structure,
    text_kept,
    tiles,
)

__all__ = ["OF_A_TILE", "RULES"]

RULES: tuple[Rule, ...] = (
    page_size.RULE,
    margins.RULE,
    tiles.RULE,
    fonts_embedded.RULE,
    text_kept.RULE,
    structure.RULE,
    scale_bar.RULE,
)

OF_A_TILE: tuple[Rule, ...] = (
    page_size.RULE,
    tiles.RULE,
    fonts_embedded.RULE,
    text_kept.RULE,
    structure.RULE,
)
"""What is asked of tiles; all else is asked of the sheet before it is cut."""
