"""The form of every help page: examples kept as written, options never abbreviated."""

from __future__ import annotations

from argparse import ArgumentParser, RawDescriptionHelpFormatter
from typing import Any


class Parser(ArgumentParser):
    """An argument parser that shows its examples as they were written."""

    def __init__(self, **options: Any) -> None:
        options.setdefault("formatter_class", RawDescriptionHelpFormatter)
        super().__init__(**options, allow_abbrev=False)
