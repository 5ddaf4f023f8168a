"""Yes leaves on one side throughout, and no on another."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.exits import exits
from chamberwise.exports.audit.kinds import DRAWN
from chamberwise.exports.audit.rule import NO_FAULT_WARNED, Mark, Measure, Rule, Where, counted
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.paper.sheet import Arrow

WORDS = ("yes", "no", "ja", "nein")


def way(arrow: Arrow) -> str:
    """Return where an arrow sets out to: up, down, left or right."""
    (x, y), (u, v) = arrow.points[0], arrow.points[1]
    if abs(u - x) > abs(v - y):
        return _("right") if u > x else _("left")
    return _("down") if v > y else _("up")


def _measure(subject: Subject) -> Iterator[Measure]:
    found: dict[str, list[tuple[str, Where]]] = {word: [] for word in WORDS}
    for _where, one in exits(subject):
        said = {each.text.of: each.flat.strip(" .:").lower() for each in one.answers}
        for link in one.links:
            word = said.get(link.arrow.of, "")
            if word in found:
                found[word].append((way(link.arrow), one.where))
    for word, ways in found.items():
        usual = Counter(each for each, _rest in ways).most_common(1)
        for each, where in ways:
            told = _('"{word}" leaves {each}, elsewhere {usual}').format(
                word=word, each=each, usual=usual[0][0]
            )
            yield counted(each != usual[0][0], where, told)


RULE = Rule(
    id="FLO-04",
    title=N_("Yes and no leave on the same side throughout"),
    limit=NO_FAULT_WARNED,
    source=N_("common practice, no source"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
    kinds=DRAWN,
)
