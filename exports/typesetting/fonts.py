"""The one typeface, from its own package: no font of the system is ever used."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from pathlib import Path

FAMILY = "Inter"


@cache
def font_folder() -> Path:
    """Return the folder that holds the font's files."""
    return Path(str(files("fontpkg_inter") / "files"))


def upright() -> Path:
    """Return the file of the upright font, which alone is printed with."""
    return font_folder() / "Inter[opsz,wght].ttf"
