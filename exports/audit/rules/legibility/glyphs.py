"""Every character that was set came out."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.block import Block
from chamberwise.exports.audit.rule import Mark, Measure, Rule, Where, at_most
from chamberwise.exports.audit.subject import Subject

LOST = "\ufffd"
UNSEEN = {"\u00ad", "\u200b", "\u2060", "\ufeff"}


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        for block in side.blocks:
            missing = _missing(block)
            yield Measure(len(missing), block.where, _told(missing))
    for number, leaf in enumerate(subject.printed.seconds, start=1):
        told = _("{lost_glyphs} glyphs stand for no letter").format(lost_glyphs=leaf.lost_glyphs)
        yield Measure(leaf.lost_glyphs, Where(number), told)


def _missing(block: Block) -> str:
    placed = Counter(each for each in block.text.text if not each.isspace() and each not in UNSEEN)
    printed = Counter("".join(each.text for each in block.stretches))
    lost = [each for each in placed if placed[each] > printed[each]]
    return "".join(sorted({*lost, *(each for each in printed if each == LOST)}))


def _told(missing: str) -> str:
    named = ", ".join(f"{each} (U+{ord(each):04X})" for each in missing[:6])
    return (
        _("{count} characters not printed: {named}").format(count=len(missing), named=named)
        if missing
        else _("0 characters lost")
    )


RULE = Rule(
    id="LEG-18",
    title=N_("Every character is in the font and was printed"),
    limit=at_most(N_("characters lost"), error=0),
    source=N_("measured: common fonts lack symbols that charts use"),
    mark=Mark.COMPUTED,
    measure=_measure,
)
