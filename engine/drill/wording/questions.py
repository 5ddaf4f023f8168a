"""Lines that ask: whether this is it, or whether something may be done, rather than say it.

To ask is not to tell: a team that hears a question waits for its answer.
"""

from __future__ import annotations

import re

_HAVE = r"(?:i|we)\s+(?:please\s+)?(?:have|get)\b"
_MAY_I = re.compile(
    rf"^(?:can|could|should|shall|may|might|must|do|would|ought)\s+(?!{_HAVE})(?:i|we)\b"
    r"|^(?:is it|would it be)\s+(?:ok|okay|safe|time|right|alright|all right)\b"
    r"|^(?:what|how) (?:if|about)\b",
    re.IGNORECASE,
)
_REQUEST = re.compile(
    r"^(?:please\s+)?(?:can|could|will|would|may|shall)\s+"
    rf"(?:you|some(?:one|body)|any(?:one|body)|one of you|the|our|{_HAVE})\b|\bplease\s*\?*$",
    re.IGNORECASE,
)
_POLITE = re.compile(
    r"^(?:please\s+)?(?:can|could|will|would)\s+(?:some(?:one|body)|any(?:one|body))\s+"
    r"(?:please\s+)?(?=\S)",
    re.IGNORECASE,
)
_WHO = re.compile(r"^(?:who|whose|which|what|where|when|why|how)\b", re.IGNORECASE)
"""It asks for an answer, and is itself what has to be said: `who operates?`."""
_ASKS = re.compile(
    r"^(?:is|are|was|has|have|had|did|does|do|could|can|might|may|would|should|what|which|why|how"
    r"|who|where|(?:what|where|who|how)'?s)\b"
    r"|^(?:do|did|have|has|is|are|was)n'?t\s+(?:i|we|it|that|this|the)\b",
    re.IGNORECASE,
)
_OPENS = re.compile(r"^(?:and|but|so|er+|um+|hm+|oh|wait|hang on|ok(?:ay)?)[ ,]+", re.IGNORECASE)


def as_an_order(text: str) -> str:
    """Return a request as what is asked for.

    >>> as_an_order("could somebody call the consultant"), as_an_order("call the consultant")
    ('call the consultant', 'call the consultant')
    """
    return _POLITE.sub("", text)


def asks_leave(text: str) -> bool:
    """Whether a line asks whether to do something, rather than says or requests it.

    >>> [asks_leave(each) for each in ("should I take the tip out?", "take the tip out?")]
    [True, True]
    >>> [asks_leave(each) for each in ("can you get the box?", "can I have the OVD?", "stop!")]
    [False, False, False]
    """
    text = _bare(text)
    if _MAY_I.search(text):
        return True
    return text.endswith("?") and not (_REQUEST.search(text) or _WHO.search(text))


def asks_whether(clause: str, *, ends_in_question: bool) -> bool:
    """Whether a clause asks whether something is so.

    >>> asks_whether("has the capsule gone", ends_in_question=False)
    True
    >>> asks_whether("I think the capsule has gone", ends_in_question=False)
    False
    """
    return ends_in_question or bool(_ASKS.search(_bare(clause)))


def _bare(text: str) -> str:
    return _OPENS.sub("", text.strip())
