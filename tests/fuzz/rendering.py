"""A tree as YAML text again, plainly laid out."""

from __future__ import annotations

import json
import re

from chamberwise.engine.reading.tree import Listing, Node, Scalar, Table

_PLAIN = re.compile(r"[a-zA-Z0-9][a-zA-Z0-9 .,/-]*(?<! )")


def rendered(node: Node) -> str:
    """Return a text that reads as the tree; hidden characters are escaped."""
    return "\n".join(_lines(node, 0)) + "\n"


def _lines(node: Node, depth: int) -> list[str]:
    pad = "  " * depth
    if isinstance(node, Scalar):
        return [pad + _text(node)]
    if isinstance(node, Listing):
        found = [f"{pad}-\n" + "\n".join(_lines(item, depth + 1)) for item in node.items]
        return found or [f"{pad}[]"]
    assert isinstance(node, Table)
    found = [
        f"{pad}{_text(entry.key)}:\n" + "\n".join(_lines(entry.value, depth + 1))
        for entry in node.entries.values()
    ]
    return found or [f"{pad}{{}}"]


def _text(scalar: Scalar) -> str:
    if _PLAIN.fullmatch(scalar.text) and not scalar.quoted:
        return scalar.text
    return json.dumps(scalar.text)
