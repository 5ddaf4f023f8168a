"""What a calculation takes, and which calculations there are."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from textwrap import wrap

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.form import STANDING, Calculation, Input, Range

WIDTH = 78


def listed(calculations: Iterable[Calculation]) -> str:
    """Return every calculation with what it is for."""
    several = list(calculations)
    width = max(len(each.name) for each in several)
    lines = []
    for each in several:
        lines += wrap(
            each.purpose,
            WIDTH,
            initial_indent=f"{each.name.ljust(width)}  ",
            subsequent_indent=" " * (width + 2),
        )
    return "\n".join([*lines, "", *wrap(" ".join(map(_, STANDING)), WIDTH)])


def described(calculation: Calculation) -> str:
    """Return the inputs of a calculation, an example, and what it does not know."""
    return "\n".join(_lines(calculation))


def _lines(calculation: Calculation) -> Iterator[str]:
    yield calculation.title.upper()
    yield from wrap(calculation.purpose, WIDTH)
    yield ""
    for each in calculation.inputs:
        yield f"  {_name(each)}"
        yield from _wrapped(f"{_capital(each.meaning)}.")
        yield from _wrapped(takes(each))
    yield from ("", _("example:"))
    yield f"  chamberwise work {calculation.name} {typed(calculation)}"
    yield from ("", _("It does not know"))
    for limit in calculation.limits:
        yield from wrap(limit, WIDTH, initial_indent="  - ", subsequent_indent="    ")
    yield ""
    yield from wrap(" ".join(map(_, STANDING)), WIDTH)


def typed(calculation: Calculation) -> str:
    """Return an example as it is typed: the inputs always needed, and those shown beside them."""
    needed = [
        each for each in calculation.inputs if each.required or each.name in calculation.shown
    ]
    return " ".join(
        f'{each.symbol or each.name}="{each.example}"'
        if " " in each.example
        else f"{each.symbol or each.name}={each.example}"
        for each in needed
    )


def takes(of: Input) -> str:
    """Return what an input takes: its words, or its unit and ranges; and what is taken unsaid."""
    parts = []
    if of.words:
        parts.append(_("one of {words}").format(words=", ".join(of.words)))
    if of.hard is not None:
        parts.append(f"{_ends(of.hard)} {of.unit}".strip())
    if of.soft is not None:
        parts.append(_("usual {ends}").format(ends=_ends(of.soft)))
    if of.unit:
        parts.append(_("unit may be left out") if of.bare else _("unit has to be written"))
    if of.is_curvature:
        parts.append(_("or a radius in mm, with its unit"))
    if of.given:
        parts.append(_("{given} if not said").format(given=of.given))
    parts.append(_("needed") if of.required else _("optional"))
    return "; ".join(parts)


def _name(of: Input) -> str:
    return f"{of.name}, {of.symbol}" if of.symbol else of.name


def _ends(ends: Range) -> str:
    return _("{low} to {high}").format(low=plain(ends.low), high=plain(ends.high))


def _capital(said: str) -> str:
    return said[:1].upper() + said[1:]


def _wrapped(said: str) -> list[str]:
    return wrap(said, WIDTH, initial_indent="      ", subsequent_indent="      ")
