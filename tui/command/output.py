"""The product goes to stdout, talk to stderr; nothing else writes to either."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable
from errno import EBADF
from os import strerror
from typing import Any, TextIO


def product(text: str) -> None:
    """Write one piece of the product and its line end; a closed pipe ends the program quietly."""
    stream: TextIO | None = sys.stdout
    if stream is None:  # closed by whoever started the program
        raise OSError(EBADF, strerror(EBADF))
    encoding = stream.encoding or "utf-8"
    safe = text.encode(encoding, "replace").decode(encoding)
    stream.write(f"{safe}\n")
    stream.flush()


def product_json(value: Any) -> None:
    """Write a value as JSON, keys in the order given."""
    product(json.dumps(value, ensure_ascii=False, indent=2, default=str))


def talk(text: str) -> None:
    """Say something to the person at the keyboard, beside the product."""
    print(text, file=sys.stderr)


def table(rows: Iterable[tuple[str, ...]], heads: tuple[str, ...]) -> str:
    """Return rows under heads in columns as wide as they need, without rules or colour."""
    lines = [heads, *rows]
    widths = [max(len(line[place]) for line in lines) for place in range(len(heads))]
    return "\n".join(
        "  ".join(cell.ljust(width) for cell, width in zip(line, widths, strict=True)).rstrip()
        for line in lines
    )
