"""What a row may be, which cells it needs, and which it may have."""

from __future__ import annotations

from dataclasses import dataclass

_STEP = ("phase", "short", "why", "at most", "after that", "sources")


@dataclass(frozen=True, slots=True)
class RowKind:
    """One kind of row. `within` names the kinds of row that it may follow as a part."""

    needs: tuple[str, ...]
    may_have: tuple[str, ...] = ()
    within: tuple[str, ...] = ()


KINDS: dict[str, RowKind] = {
    "phase": RowKind(("name", "text")),
    "finding": RowKind(("name", "text"), ("about", "sources")),
    "value": RowKind(("name", "text"), ("sign", "sources"), ("finding",)),
    "act": RowKind(("name", "text"), ("sources",)),
    "question": RowKind(("name", "text", "finding"), _STEP),
    "answer": RowKind(("name", "go to"), ("text", "value"), ("question",)),
    "do": RowKind(("text", "who"), ("name", "act", "go to", *_STEP), ("do", "say")),
    "say": RowKind(("text", "who"), ("name", "act", "go to", *_STEP), ("do", "say")),
    "hand over": RowKind(("name", "text", "go to"), _STEP),
    "back": RowKind(("name", "go to"), (), ("hand over",)),
    "end": RowKind(("name", "text"), _STEP),
    "owed": RowKind(("text", "who"), ("act", "when"), ("end",)),
}
"""By the word in the column `row`. A do or say row without a name goes on with the step above."""
