"""Commas and points in a number that was typed: read where there is one way, refused where two.

In English a comma is refused, since it may part decimals, thousands or several numbers. In a
language that writes decimals with a comma, comma and point are both read as the mark of decimals;
what looks like thousands (`1.000`, `1,000`) is refused, and so is a comma that may part numbers.
"""

from __future__ import annotations

import re

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.form import Input, Kind
from chamberwise.engine.working.refusal import RefusedError, refused

LONGEST = 60
_COMMA = re.compile(r"[0-9]\s*,\s*[0-9]")
_PARTING = re.compile(r"[0-9](\s+,\s*|,\s+)[0-9]")
_FIGURE = re.compile(r"[0-9][0-9.,]*[0-9]|[0-9]")
_THOUSANDS = re.compile(r"[1-9][0-9]{0,2}[.,][0-9]{3}")
_MARKS = re.compile(r"[.,]")


def with_points(of: Input, text: str) -> str:
    """Return what was typed with a point for decimals. Raises `RefusedError` for what is in doubt.

    >>> from chamberwise.engine.working.optics.inputs import LENS
    >>> with_points(LENS, "20.5 D")
    '20.5 D'
    """
    if decimal(".") == ".":
        if _COMMA.search(text):
            raise _comma(of, text)
        return text
    if _PARTING.search(text):
        raise _comma(of, text)
    figures = _FIGURE.findall(text)
    for figure in figures:
        _refuse_doubt(of, figure)
    if of.kind is Kind.SEVERAL and len(figures) == 1 and "," in figures[0]:
        raise _comma(of, text)
    return _FIGURE.sub(lambda found: found.group().replace(",", "."), text)


def _refuse_doubt(of: Input, figure: str) -> None:
    shown = figure[:LONGEST]
    if len(_MARKS.findall(figure)) > 1:
        raise refused(
            of.name,
            _("`{input}` has more than one point or comma: {figure}").format(
                input=of.name, figure=shown
            ),
            _("One of them may part thousands."),
            _("Write one mark for decimals, and none for thousands."),
        )
    if _THOUSANDS.fullmatch(figure):
        whole, decimals = _MARKS.split(figure)
        raise refused(
            of.name,
            _("`{input}` can be read in two ways: {figure}").format(input=of.name, figure=shown),
            _("The mark may part decimals or thousands."),
            _("Write `{whole}` for thousands, or `{decimal}` for decimals.").format(
                whole=whole + decimals, decimal=decimal(f"{whole}.{decimals}0")
            ),
        )


def _comma(of: Input, text: str) -> RefusedError:
    dotted = re.sub(r"\s*,\s*", ".", text)
    return refused(
        of.name,
        _("`{input}` has a comma: {text}").format(input=of.name, text=text[:LONGEST]),
        _("A comma may part decimals or thousands, or several numbers."),
        _(
            'Write a point for decimals, as `{input}="{dotted}"`, and blanks between numbers.'
        ).format(input=of.name, dotted=dotted[:LONGEST]),
    )
