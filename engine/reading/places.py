"""A place as people type it, in a sheet, an acceptance or a translation."""

from __future__ import annotations

from chamberwise.engine.diagnostics.problem import Pointer


def place_of(typed: str) -> Pointer:
    """Return a place as typed, such as `steps / fill-chamber / do / 1 / does`.

    >>> place_of("steps / fill-chamber / do / 1 / does")
    ('steps', 'fill-chamber', 'do', 0, 'does')
    >>> place_of("steps/fill-chamber/short")
    ('steps', 'fill-chamber', 'short')
    """
    parts = [part.strip() for part in typed.split("/")]
    return tuple(int(part) - 1 if part.isdecimal() else part for part in parts)
