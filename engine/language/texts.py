"""The texts of the program under the names that gettext and its tools know them by.

    from chamberwise.engine.language.texts import gettext as _

    _("The step {step} has no title.").format(step=step)

What is filled in has a name, so that a sentence can be built otherwise in another language. A text
kept at the top of a module is marked there by `N_` and told by `_` where it is shown.
"""

from __future__ import annotations

from chamberwise.engine.language.speaking import spoken_texts


def gettext(text: str) -> str:
    """Return the text in the language that is spoken, as it is where that has none."""
    return spoken_texts().gettext(text) if text else text


def ngettext(one: str, many: str, number: int) -> str:
    """Return the form of the text that goes with the number."""
    return spoken_texts().ngettext(one, many, number)


def pgettext(context: str, text: str) -> str:
    """Return the text as it is said in that context."""
    return spoken_texts().pgettext(context, text)


def N_(text: str) -> str:  # noqa: N802
    """Mark a text that is told later, and return it as it is."""
    return text
