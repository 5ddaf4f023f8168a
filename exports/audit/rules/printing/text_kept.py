"""Words are words in the file, and two readers read the same."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, at_least, counted
from chamberwise.exports.audit.subject import PLAIN, Side, Subject

ROUNDED = 0.15
"""Points by which sizes rounded to tenths may differ."""


def letters(text: str) -> Counter[str]:
    """Return how often each character stands in a text, white space aside.

    The sign at the end of a parted word is a hyphen, whichever way a reader tells it.
    """
    return Counter("".join(text.translate(PLAIN).replace("\u00ad", "-").split()))


def _measure(subject: Subject) -> Iterator[Measure]:
    for side, second in zip(subject.sides, subject.printed.seconds, strict=False):
        for block in side.blocks:
            share = _share(letters(block.text.text), letters(block.flat))
            yield Measure(
                share,
                block.where,
                _("{share} % of its characters").format(share=decimal(f"{share:.0f}")),
            )
        first = letters("".join(each.text for each in side.leaf.stretches))
        share = _share(first, letters(second.text))
        yield Measure(
            share,
            side.top,
            _("{share} % the same for both readers").format(share=decimal(f"{share:.0f}")),
        )
        told = _("type sizes differ between readers")
        yield counted(not _same_sizes(side, second.sizes), side.top, told, NO_FAULT)


def _share(wanted: Counter[str], found: Counter[str]) -> float:
    return 100 * (wanted & found).total() / wanted.total() if wanted else 100.0


def _same_sizes(side: Side, sizes: frozenset[float]) -> bool:
    first = {round(each.size, 1) for each in side.leaf.stretches}
    return all(any(abs(one - other) < ROUNDED for other in sizes) for one in first)


RULE = Rule(
    id="PRT-06",
    title=N_("Words can be taken out of the file as text"),
    limit=at_least(N_("% of characters"), error=100),
    source=N_("common practice, no source"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
