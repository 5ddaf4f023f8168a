"""What is typed after an option, read with a plain word on what is wrong."""

from __future__ import annotations

from argparse import ArgumentParser, ArgumentTypeError
from datetime import date

from chamberwise.engine.language.texts import gettext as _


def day(text: str) -> date:
    """Return a date typed as 2026-11-25."""
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise ArgumentTypeError(
            _("`{text}` is no date; type one such as 2026-11-25").format(text=text)
        ) from None


def add_on(parser: ArgumentParser) -> None:
    """Let a command take `--on`."""
    parser.add_argument("--on", type=day, metavar=_("DATE"), help=_("as if it were DATE"))


def whole_number(text: str) -> int:
    """Return a whole number from 0 on."""
    if not text.isascii() or not text.isdigit():
        raise ArgumentTypeError(
            _("`{text}` is no whole number; type one such as 7").format(text=text)
        )
    return int(text)
