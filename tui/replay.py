"""Sitting down to a replay: the walk with its moves ahead, and the rules it is known to break."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.meaning.moments import Moment
from chamberwise.engine.meaning.state import Move
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.patterns.formula import holds
from chamberwise.engine.proof.rules import comes_back_by, rules_for
from chamberwise.engine.proof.trace import formula, is_lost, letters, trace
from chamberwise.engine.proof.verdict import Counterexample
from chamberwise.engine.reading.digest import digest
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.walk.walk import set_out
from chamberwise.exports.proof.cause import cause
from chamberwise.exports.proof.telling import Telling
from chamberwise.tui.replaying import Broken
from chamberwise.tui.sitting import Clock, Sitting


def sit_down_to_replay(
    loaded: Loaded, pathway: str, moves: tuple[Move, ...], clock: Clock
) -> Sitting:
    """Return a walk with the moves of a replay ahead of it. It is never kept as unfinished."""
    walk = set_out(loaded.library, pathway, digest(loaded, pathway), clock(), moves)
    return Sitting(loaded, walk, clock, None, broken=broken_on(loaded, pathway, moves))


def broken_on(loaded: Loaded, pathway: str, moves: tuple[Move, ...]) -> tuple[Broken, ...]:
    """Return every rule that a walk breaks, the first broken first."""
    found = [
        each
        for rule in rules_for(loaded.library, pathway)
        if (each := _broken(loaded, pathway, moves, rule)) is not None
    ]
    return tuple(sorted(found, key=lambda each: each.step))


def _broken(loaded: Loaded, pathway: str, moves: tuple[Move, ...], rule: Rule) -> Broken | None:
    library = loaded.library
    walked = trace(library, pathway, moves)
    moment = is_lost(library, pathway, rule, walked)
    if moment is None and not _is_unkept(library, pathway, rule, walked):
        return None
    telling = Telling(library, rule, Counterexample(pathway, moves, moment))
    return Broken(telling.step_of(telling.broke_at), rule.title, cause(telling))


def _is_unkept(library: Library, pathway: str, rule: Rule, walked: Sequence[Moment]) -> bool:
    """Whether the walk came to an end at which the rule is judged, and what it asks never came."""
    if not walked or not walked[-1].is_outcome:
        return False
    place = walked[-1].place
    if place.pathway == pathway and place.step in comes_back_by(library, pathway):
        return False
    return not holds(formula(rule), letters(library, pathway, rule, walked))
