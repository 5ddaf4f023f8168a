"""Yes leaves on one side throughout, and no on another."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from chamberwise.exports.audit.exits import exits
from chamberwise.exports.audit.kinds import DRAWN
from chamberwise.exports.audit.rule import NO_FAULT_WARNED, Mark, Measure, Rule, Where, counted
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.paper.sheet import Arrow

WORDS = ("yes", "no")


def way(arrow: Arrow) -> str:
    """Return where an arrow sets out to: up, down, left or right."""
    (x, y), (u, v) = arrow.points[0], arrow.points[1]
    if abs(u - x) > abs(v - y):
        return "right" if u > x else "left"
    return "down" if v > y else "up"


def _measure(subject: Subject) -> Iterator[Measure]:
    found: dict[str, list[tuple[str, Where]]] = {word: [] for word in WORDS}
    for _, one in exits(subject):
        said = {each.text.of: each.flat.strip(" .:").lower() for each in one.answers}
        for link in one.links:
            word = said.get(link.arrow.of, "")
            if word in found:
                found[word].append((way(link.arrow), one.where))
    for word, ways in found.items():
        usual = Counter(each for each, _ in ways).most_common(1)
        for each, where in ways:
            told = f'"{word}" leaves {each}, elsewhere {usual[0][0]}'
            yield counted(each != usual[0][0], where, told)


RULE = Rule(
    id="FLO-04",
    title="Yes and no leave on the same side throughout",
    limit=NO_FAULT_WARNED,
    source="common practice, no source",
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
    kinds=DRAWN,
)
