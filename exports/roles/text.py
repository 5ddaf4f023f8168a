"""Role cards as plain text, for a screen reader."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import FOLLOW
from chamberwise.exports.flow.block import Group
from chamberwise.exports.paper.sheet import Role
from chamberwise.exports.roles.blocks import groups
from chamberwise.exports.roles.content import RoleCard


def text(cards: Iterable[RoleCard]) -> str:
    """Return the cards one after the other, all that each says in its order."""
    return "\n\n".join("\n".join(_lines(card)) for card in cards) + "\n"


def _lines(card: RoleCard) -> Iterator[str]:
    yield _("{duty}: role card of {pathway}").format(duty=card.duty, pathway=card.pathway)
    yield _(FOLLOW)
    for group in groups(card):
        yield from _of_group(group)


def _of_group(group: Group) -> Iterator[str]:
    for block in group.blocks:
        said = "".join(run.text for run in block.runs)
        if block.role is Role.HEADING:
            yield ""
        lead = block.lead if block.lead != "•" else "-"
        yield f"   {lead} {said}" if lead else said
