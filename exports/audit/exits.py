"""The ways out of each question of a page, by arrows and by answers printed under its name."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from chamberwise.exports.audit.block import Block
from chamberwise.exports.audit.flow import Link, box_of
from chamberwise.exports.audit.rule import Where
from chamberwise.exports.audit.subject import Side, Subject
from chamberwise.exports.paper.sheet import Outline, Role


@dataclass(frozen=True, slots=True)
class Exits:
    """A question's box, its arrows, and the answers that are printed for it."""

    where: Where
    links: tuple[Link, ...]
    answers: tuple[Block, ...]
    is_asked: bool
    """Whether a question stands in it; a branch goes on by what is known."""

    @property
    def count(self) -> int:
        """How many ways out there are."""
        named = {each.text.of for each in self.answers} | {each.arrow.of for each in self.links}
        return len(named) if "" not in named else max(len(self.links), len(self.answers))


def exits(subject: Subject) -> Iterator[tuple[Side, Exits]]:
    """Yield every question that is drawn as a decision."""
    for side in subject.sides:
        for place, node in enumerate(side.flow.nodes):
            if node.outline is Outline.DECISION and node.of:
                answers = tuple(
                    each
                    for each in side.blocks
                    if each.role is Role.ANSWER and f"{each.text.of}/".startswith(f"{node.of}/")
                )
                where = Where(side.number, node.x, node.y, node.of)
                is_asked = any(
                    each.role is Role.QUESTION
                    and (each.text.of == node.of or box_of(node).holds(each.box.centre))
                    for each in side.blocks
                )
                yield side, Exits(where, tuple(side.flow.leaving(place)), answers, is_asked)
