"""What argparse itself says on help pages and of what was mistyped, told in the language spoken.

argparse tells its texts through two names of its module, `_` and `ngettext`. They are set to ours,
which hand every text on as it is while English is spoken.
"""

from __future__ import annotations

import argparse

from chamberwise.engine.language.texts import N_, gettext, ngettext

TEXTS = (
    N_("usage: "),
    N_("positional arguments"),
    N_("options"),
    N_("show this help message and exit"),
    N_("argument %(argument_name)s: %(message)s"),
    N_("the following arguments are required: %s"),
    N_("one of the arguments %s is required"),
    N_("unrecognized arguments: %s"),
    N_("not allowed with argument %s"),
    N_("ignored explicit argument %r"),
    N_("expected one argument"),
    N_("expected at most one argument"),
    N_("expected at least one argument"),
    N_("invalid choice: %(value)r (choose from %(choices)s)"),
    N_("unknown parser %(parser_name)r (choices: %(choices)s)"),
)
"""The texts of Python 3.11 to 3.13 that a parser of this program can come to."""


def told_by_argparse() -> None:
    """Let argparse tell its texts in the language spoken."""
    vars(argparse).update(_=gettext, ngettext=ngettext)
