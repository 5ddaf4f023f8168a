"""The remarks in a template, told in the language that is spoken; keys and contents are not."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from chamberwise.engine.language.texts import gettext


def remark(text: str, indent: str = "") -> str:
    """Return a text of several lines as remarks of YAML; the first stands where it is put.

    >>> print(remark("One.\\nTwo."))
    # One.
    # Two.
    """
    return f"\n{indent}".join(f"# {line}" for line in text.split("\n"))


TELLING: Mapping[str, Callable[..., str]] = {"_": gettext, "remark": remark}
"""What templates call."""
