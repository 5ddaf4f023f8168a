"""Nearest-name suggestions for a name that is not defined."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches

from chamberwise.engine.language.texts import gettext as _

SHORT = 5
FURTHEST = 8
MOST = 200
"""Comparing is slow: a long list is looked through only where the first letter is the same."""


def nearest(name: str, known: Iterable[str]) -> str | None:
    """Return the known name most like `name`, or `None` when none is near enough.

    >>> nearest("sugeon", ["scrub-practitioner", "surgeon"])
    'surgeon'
    >>> nearest("SRK-T", ["hoffer-q", "srk-t"])
    'srk-t'
    >>> nearest("x", ["surgeon"]) is None
    True
    """
    known = list(known)
    if small := [each for each in known if each.casefold() == name.casefold()]:
        return small[0]
    holding = [each for each in known if len(name) > SHORT and (name in each or each in name)]
    if len(holding) == 1:
        return holding[0]
    alike = [each for each in known if abs(len(each) - len(name)) <= FURTHEST]
    if len(alike) > MOST:
        alike = [each for each in alike if each[:1] == name[:1]][:MOST]
    found = get_close_matches(name, alike, n=1, cutoff=0.6)
    return found[0] if found else None


def did_you_mean(name: str, known: Iterable[str], otherwise: str) -> str:
    """Return the advice for an unknown name: the nearest known one, else `otherwise`."""
    found = nearest(name, known)
    return _("Did you mean `{found}`?").format(found=found) if found else otherwise
