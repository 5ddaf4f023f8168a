"""A box holds no more than can be taken in at once."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.exports.audit.block import Block
from chamberwise.exports.audit.kinds import TABLES, TO_DO
from chamberwise.exports.audit.rule import EVERY_KIND, Mark, Measure, Rule, Where, at_most
from chamberwise.exports.audit.subject import Side, Subject
from chamberwise.exports.paper.sheet import Shape


def holder(side: Side, block: Block) -> Shape | None:
    """Return the least shape that a text stands in."""
    middle = block.box.centre
    around = [(box.area, place) for place, (box, _) in enumerate(side.shapes) if box.holds(middle)]
    return side.shapes[min(around)[1]][1] if around else None


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        held = [holder(side, each) for each in side.blocks if each.role in TO_DO]
        for shape, count in Counter(each for each in held if each).items():
            yield Measure(count, Where(side.number, shape.x, shape.y, shape.of))


RULE = Rule(
    id="STR-05",
    title=N_("Items in one box"),
    limit=at_most(N_("items"), warning=9),
    source=N_("Gawande 2010, 5 to 9 items (notes on it read)"),
    mark=Mark.VERIFIED,
    measure=_measure,
    kinds=EVERY_KIND - TABLES,
)
