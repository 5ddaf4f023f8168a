"""Lines begin below one another and end where words end; only a very long word is broken."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.block import Block
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.legibility.angle import MM_PER_POINT
from chamberwise.exports.legibility.long_words import may_be_parted
from chamberwise.exports.paper.sheet import Role

RAGGED = 0.15
"""Left edges may differ by so many em: letters stand at unlike distances from their edge."""
FLUSH = 0.02
"""Right edges nearer than so many em on three lines and more are justified."""
_HYPHENS = ("-", "\u00ad", "\u2010")


def _measure(subject: Subject) -> Iterator[Measure]:
    for _where, block in subject.blocks():
        if len(block.lines) > 1 and block.role is not Role.MARK:
            told = _fault(block)
            yield counted(bool(told), block.where, told)


def _fault(block: Block) -> str:
    em = block.size * MM_PER_POINT
    starts = [line.along for line in block.lines]
    if max(starts) - min(starts) > RAGGED * em:
        return _("lines do not begin below one another")
    if _is_justified(block, em):
        return _("lines are justified")
    return _("a word is hyphenated") if _is_hyphenated(block) else ""


def _is_justified(block: Block, em: float) -> bool:
    if block.text.turned or len(block.lines) < 4:
        return False
    ends = [line.box.right for line in block.lines[:-1]]
    return max(ends) - min(ends) < FLUSH * em


def _is_hyphenated(block: Block) -> bool:
    placed = "".join(block.text.text.split())
    words = block.text.text.split()
    for above, below in zip(block.lines, block.lines[1:], strict=False):
        end = above.text.rstrip()
        if end.endswith(_HYPHENS):
            seam = "".join(end.split())[-6:] + "".join(below.text.split())[:3]
            if seam not in placed and not _is_of_a_long_word(end, below.text, words):
                return True
    return False


def _is_of_a_long_word(above: str, below: str, words: list[str]) -> bool:
    """Whether a line ends within a word so long that it may be parted."""
    seam = above.split()[-1][:-1] + below.split()[0].rstrip("".join(_HYPHENS))
    return any(seam in word and may_be_parted(word) for word in words)


RULE = Rule(
    id="LEG-13",
    title=N_("Left-aligned, not justified, not hyphenated"),
    limit=NO_FAULT,
    source=N_("WCAG 1.4.8, not justified; hyphenation: common practice"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
