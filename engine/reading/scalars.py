"""What the text of a scalar stands for. No guessing: each kind says which texts it takes."""

from __future__ import annotations

import re
from datetime import date
from typing import TypeAlias
from unicodedata import normalize

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading.shapes import Kind, Scalar

Typed: TypeAlias = str | int | date | bool

NAME_PATTERN = r"^(?!(?:true|false|null)$)[a-z][a-z0-9]*(?:-[a-z0-9]+)*$"
COUNT_PATTERN = r"^[1-9][0-9]?$"
DATE_PATTERN = r"^[12][0-9]{3}-[01][0-9]-[0-3][0-9]$"
DURATION_PATTERN = r"^[1-9][0-9]{0,3} (?:s|min|h)$"
DIGEST_PATTERN = r"^[0-9A-HJKMNP-TV-Z]{4}(?:-[0-9A-HJKMNP-TV-Z]{4}){2}$"
EDITION_PATTERN = r"^(?:0|[1-9][0-9]{0,3})(?:\.[0-9]{1,3})?$"

NOTHING = ("", "~", "null", "Null", "NULL")
"""Texts that stand for nothing to other readers of YAML, editors among them."""

LONGEST_ADVISED = 60
_SECONDS = {"s": 1, "min": 60, "h": 3600}
PATTERNS = {
    Kind.NAME: NAME_PATTERN,
    Kind.COUNT: COUNT_PATTERN,
    Kind.DATE: DATE_PATTERN,
    Kind.DURATION: DURATION_PATTERN,
    Kind.EDITION: EDITION_PATTERN,
    Kind.DIGEST: DIGEST_PATTERN,
}
_COMPILED = {
    kind: re.compile(pattern.removesuffix("$") + r"\Z") for kind, pattern in PATTERNS.items()
}

EXPECTED = {
    Kind.NAME: N_("a name in small letters, figures and hyphens"),
    Kind.COUNT: N_("a whole number from 1 to 99"),
    Kind.DATE: N_("a date such as 2026-11-25"),
    Kind.DURATION: N_("a duration such as `30 s`, `5 min` or `2 h`"),
    Kind.EDITION: N_("an edition such as `0.3` or `2`"),
    Kind.DIGEST: N_("a digest such as `ZE6X-PR7Y-B0Q0`, which `chamberwise check` tells"),
    Kind.YES_NO: N_("`yes` or `no`"),
    Kind.TEXT: N_("text"),
}


class UntypedError(ValueError):
    """The text does not stand for what is due here; `args[0]` says what is due."""

    def __init__(self, expected: str, advice: str) -> None:
        super().__init__(expected)
        self.expected = expected
        self.advice = advice


def typed(text: str, shape: Scalar) -> Typed:
    """Return the value a text stands for. Raises `UntypedError` when it stands for none."""
    kind = shape.kind
    if kind is Kind.WORD:
        return _word(text, shape.words)
    if kind is Kind.YES_NO:
        if text not in ("yes", "no"):
            raise UntypedError(_(EXPECTED[kind]), _("Write `yes` or `no`."))
        return text == "yes"
    if kind is Kind.TEXT:
        if not text.strip() or text in NOTHING:
            raise UntypedError(
                _("text, and there is none"), _("Write the text, or delete the key.")
            )
        return text
    if not _COMPILED[kind].match(text):
        raise UntypedError(_(EXPECTED[kind]), _advice(text, kind))
    return _convert(text, kind)


def _convert(text: str, kind: Kind) -> Typed:
    if kind is Kind.COUNT:
        return int(text)
    if kind is Kind.DURATION:
        number, unit = text.split(" ")
        return int(number) * _SECONDS[unit]
    if kind is Kind.DATE:
        try:
            return date.fromisoformat(text)
        except ValueError:
            raise UntypedError(
                _("a day of the calendar"), _("Check the month and the day.")
            ) from None
    return text


def _word(text: str, words: tuple[str, ...]) -> str:
    if text in words:
        return text
    listed = ", ".join(f"`{word}`" for word in words)
    raise UntypedError(
        _("one of {listed}").format(listed=listed),
        did_you_mean(text, words, _("Choose one of {listed}.").format(listed=listed)),
    )


def _advice(text: str, kind: Kind) -> str:
    if kind is Kind.NAME:
        letters = normalize("NFKD", text[:LONGEST_ADVISED].lower()).encode("ascii", "ignore")
        slug = re.sub(r"[^a-z0-9]+", "-", letters.decode()).strip("-")
        if _COMPILED[Kind.NAME].match(slug):
            return _("Write `{slug}`.").format(slug=slug)
    return _("Write {expected}.").format(expected=_(EXPECTED[kind]))
