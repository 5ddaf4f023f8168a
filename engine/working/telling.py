"""A calculation as it is told: its texts, examples and assumed values in the language spoken."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from chamberwise.engine.language.languages import ENGLISH
from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.speaking import spoken
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.form import Calculation, Input, Kind, meaning_of

NUMERIC = (Kind.NUMBER, Kind.SEVERAL)


def as_told(calculation: Calculation) -> Calculation:
    """Return a calculation in the language that is spoken; the one there is in English."""
    code = spoken().code
    return calculation if code == ENGLISH.code else _told(calculation, code)


@cache
def _told(calculation: Calculation, _code: str) -> Calculation:
    return replace(
        calculation,
        title=_(calculation.title),
        purpose=_(calculation.purpose),
        inputs=tuple(map(_input, calculation.inputs)),
        limits=tuple(map(_, calculation.limits)),
        cautions=tuple(map(_, calculation.cautions)),
    )


def _input(of: Input) -> Input:
    is_numeric = of.kind in NUMERIC
    choices = tuple((word, _(title)) for word, title in of.choices)
    return replace(
        of,
        meaning=meaning_of(choices) if choices else _(of.meaning),
        example=decimal(of.example) if is_numeric else of.example,
        given=decimal(of.given) if is_numeric else of.given,
        outside=_(of.outside),
        slip=(of.slip[0], _(of.slip[1])) if of.slip else None,
        choices=choices,
    )
