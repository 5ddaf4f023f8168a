"""What is typed after an option, read with a plain word on what is wrong."""

from __future__ import annotations

from argparse import ArgumentParser, ArgumentTypeError
from datetime import date


def day(text: str) -> date:
    """Return a date typed as 2026-11-25."""
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise ArgumentTypeError(f"`{text}` is no date; type one such as 2026-11-25") from None


def add_on(parser: ArgumentParser) -> None:
    """Let a command take `--on`."""
    parser.add_argument("--on", type=day, metavar="DATE", help="as if it were DATE")


def whole_number(text: str) -> int:
    """Return a whole number from 0 on."""
    if not text.isascii() or not text.isdigit():
        raise ArgumentTypeError(f"`{text}` is no whole number; type one such as 7")
    return int(text)
