"""The measures of one run, each a count of so many with its limits."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.drill.entries import Wondered
from chamberwise.engine.drill.measures.loops import closure
from chamberwise.engine.drill.measures.measured import Measured
from chamberwise.engine.drill.measures.omissions import omission
from chamberwise.engine.drill.measures.prompting import dependence
from chamberwise.engine.drill.measures.proportion import Share
from chamberwise.engine.drill.measures.surviving import Duration
from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.debrief.content import Figure
from chamberwise.exports.debrief.wording import Wording, lowered


def figures(of: Measured, words: Wording) -> Iterator[Figure]:
    """Yield what a run shows; what does not apply is left out."""
    if of.recognition is not None:
        yield Figure(_("Cue to saying what it is"), f"{seconds(of.recognition)}{_asked(of)}")
    yield from _share(_("Critical acts left out"), omission(of.acts))
    kept, broken = len(of.orders.kept), len(of.orders.broken)
    pairs = "; ".join(
        _("“{first}” belongs before “{then}”").format(
            first=lowered(words.act(order.first)), then=lowered(words.act(order.then))
        )
        for order, _when in of.orders.broken
    )
    yield from _share(_("Orders broken"), Share(broken, kept + broken), pairs)
    yield from _share(_("Critical acts chosen from a menu or told"), dependence(of.acts))
    yield from _share(_("Requests read back and reported done"), closure(of.loops))


def _asked(of: Measured) -> str:
    """Return when it was first only asked, if it was before it was said."""
    run, said = of.run, of.run.recognised
    asked = [each.at for each in run.entries if isinstance(each, Wondered)]
    first = min((at for at in asked if said is None or at < said.at), default=None)
    if first is None or run.first_cue is None or first < run.first_cue:
        return ""
    return _(" (asked at {seconds} s, which told nobody)").format(
        seconds=decimal(f"{(first - run.first_cue) / 1000:.0f}")
    )


def _share(what: str, share: Share, which: str = "") -> Iterator[Figure]:
    if share.of:
        yield Figure(what, f"{counted(share)}: {which}" if which else counted(share))


def counted(share: Share) -> str:
    """Return a share with its exact limits.

    >>> counted(Share(1, 5))
    '1 of 5 (95 % limits: 1 to 72 of 100)'
    """
    limits = share.exact
    return _("{count} of {of} (95 % limits: {low} to {high} of 100)").format(
        count=share.count,
        of=share.of,
        low=round(limits.low * 100),
        high=round(limits.high * 100),
    )


def seconds(duration: Duration) -> str:
    """Return how long something took, or that it had not happened by then."""
    if duration.happened:
        return f"{duration.seconds:.0f} s"
    return _("not within {seconds} s").format(seconds=decimal(f"{duration.seconds:.0f}"))
