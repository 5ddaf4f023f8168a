"""What the register keeps in English, told in the language that is spoken.

Only the words of the program are told anew; what a pathway says stays as it was kept.
"""

from __future__ import annotations

import re

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.language.values import told

_ANSWER = re.compile(r"the answer “(.*)”", re.DOTALL)
_BACK = re.compile(r"coming back by `(.*)`")
_BOUND = re.compile(r"after (\d+) times it")
_SAYS = ": says: "
_APPROVED = "approved by "
_DRAFT = "draft, approved by nobody"


def way_told(kept: str) -> str:
    """Return a way on."""
    if found := _ANSWER.fullmatch(kept):
        return _("the answer “{label}”").format(label=found[1])
    if found := _BACK.fullmatch(kept):
        return _("coming back by `{outcome}`").format(outcome=found[1])
    if found := _BOUND.fullmatch(kept):
        return _("after {number} times it").format(number=found[1])
    return {"it": _("it"), "“otherwise”": _("“otherwise”"), "“not known”": _("“not known”")}.get(
        kept, kept
    )


def line_told(kept: str) -> str:
    """Return a line: who, whether it is said, and what."""
    return kept.replace(_SAYS, _(": says: "), 1)


def caution_told(kept: str) -> str:
    """Return a caution by its signal word."""
    signal, colon, rest = kept.partition(":")
    return f"{told(signal.lower()).upper()}{colon}{rest}"


def approval_told(kept: str) -> str:
    """Return who stands for a pathway."""
    if kept.startswith(_APPROVED):
        return _("approved by {who}").format(who=kept.removeprefix(_APPROVED))
    return _("draft, approved by nobody") if kept == _DRAFT else told(kept)
