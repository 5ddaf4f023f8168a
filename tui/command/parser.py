"""The form of every help page: examples kept as written, options never abbreviated."""

from __future__ import annotations

from argparse import ArgumentParser, RawDescriptionHelpFormatter
from typing import Any, NoReturn

from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.argparse_texts import told_by_argparse

told_by_argparse()


class Parser(ArgumentParser):
    """An argument parser that shows its examples as they were written.

    With `intermixed`, what is typed without a dash may stand on both sides of an option.
    """

    def __init__(self, *, intermixed: bool = False, **options: Any) -> None:
        options.setdefault("formatter_class", RawDescriptionHelpFormatter)
        super().__init__(**options, allow_abbrev=False)
        self._intermixed = intermixed

    def error(self, message: str) -> NoReturn:
        """Say what is wrong and where help stands: the whole usage would push it out of sight."""
        told = _("{prog}: {message}\n`{prog} --help` shows what may be typed.\n").format(
            prog=self.prog, message=message
        )
        self.exit(2, told)

    def parse_known_args(self, args: Any = None, namespace: Any = None) -> Any:
        """Return what was typed and what was not understood."""
        if not self._intermixed:
            return super().parse_known_args(args, namespace)
        self._intermixed = False
        if self.usage is None:  # argparse would cut as much from it as `usage: ` is long
            self.usage = self.format_usage()[len(_("usage: ")) :]
        try:
            return self.parse_known_intermixed_args(args, namespace)
        finally:
            self._intermixed = True
