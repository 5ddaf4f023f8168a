"""The page is the size of the paper."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import Mark, Measure, Rule, Where, at_most
from chamberwise.exports.audit.subject import Subject

SMALL, MIDDLE = 150, 600


def tolerance(side: float) -> float:
    """Return by how many millimetres ISO 216 lets a side differ.

    >>> tolerance(148), tolerance(210), tolerance(841)
    (1.5, 2.0, 3.0)
    """
    if side <= SMALL:
        return 1.5
    return 2.0 if side <= MIDDLE else 3.0


def _measure(subject: Subject) -> Iterator[Measure]:
    wanted = subject.terms.sized.format
    printed = subject.printed
    read = [
        *((number, (leaf.width, leaf.height)) for number, leaf in enumerate(printed.leaves, 1)),
        *((number, (leaf.width, leaf.height)) for number, leaf in enumerate(printed.seconds, 1)),
    ]
    for number, sides in read:
        # Cards lie across their paper whichever way round it was asked for.
        pairs = zip(sorted(sides), sorted(wanted), strict=True)
        off = max(abs(found - side) / tolerance(side) for found, side in pairs)
        told = _("{wide} by {high} mm for {width} by {height}").format(
            wide=decimal(f"{sides[0]:.1f}"),
            high=decimal(f"{sides[1]:.1f}"),
            width=decimal(f"{wanted.width:g}"),
            height=decimal(f"{wanted.height:g}"),
        )
        yield Measure(off, Where(number), told)
    missing = abs(len(subject.sheet.pages) - len(subject.printed.leaves))
    yield Measure(
        100.0 * missing, told=_("{missing} pages too many or too few").format(missing=missing)
    )


RULE = Rule(
    id="PRT-01",
    title=N_("The page box is the paper, within the tolerance of ISO 216"),
    limit=at_most(N_("of the tolerance"), error=1),
    source=N_("ISO 216 sizes and tolerances (secondary source)"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
