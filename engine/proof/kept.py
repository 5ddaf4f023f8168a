"""Verdicts kept from one save to the next.

A verdict hangs on the rule and on the library as walks go by it, and on nothing else: it is looked
up by these two values themselves. What only looks changed is found again, what changed is proved
again.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from threading import Lock

from chamberwise.engine.exploration.bare import bare, bare_rule
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.rules import rules_for
from chamberwise.engine.proof.standing import Standing
from chamberwise.engine.proof.verdict import Proof, Unproven, Verdict

MOST_KEPT = 4
"""Of how many states of a file verdicts are kept: enough to take an edit back."""


@dataclass(slots=True, eq=False)
class _Of:
    """What was proved of a pathway of one bare library: its verdicts by bare rule."""

    library: Library
    pathway: PathwayId
    verdicts: dict[Rule, Verdict] = field(default_factory=dict)
    states: int = 0


@dataclass(slots=True)
class Kept:
    """The verdicts found last, those of the latest content at the end."""

    _found: list[_Of] = field(default_factory=list)
    _standing: dict[PathwayId, Standing] = field(default_factory=dict)
    _alone: Lock = field(default_factory=Lock)
    """Held while something is proved: a proof that is given up ends before the next begins."""

    def proof(
        self,
        library: Library,
        pathway: PathwayId,
        tell: Callable[[Mapping[Rule, Verdict]], None] | None = None,
    ) -> Proof:
        """Return the verdicts on all rules that bind a pathway, proving those not known yet.

        `tell` is told at once what stands, and then what is settled besides. The states are those
        that were looked at for these verdicts, whenever that was.
        """
        rules = {rule: bare_rule(rule) for rule in rules_for(library, pathway)}
        known = self._of(bare(library), pathway)
        missing = [each for each in rules.values() if each not in known.verdicts]

        def say(settled: Mapping[Rule, Verdict]) -> None:
            if tell is not None:
                both = {**known.verdicts, **settled}
                tell({r: replace(both[b], rule=r) for r, b in rules.items() if b in both})

        if missing:
            say({})
            is_all = len(missing) == len(rules)
            standing = self._standing.setdefault(pathway, Standing()) if is_all else None
            with self._alone:
                found = prove(known.library, pathway, missing, tell=say, standing=standing)
            known.states += found.states
            known.verdicts.update(zip(missing, found.verdicts, strict=True))
        verdicts = tuple(replace(known.verdicts[b], rule=r) for r, b in rules.items())
        self._forget_unproven(known)
        return Proof(pathway, known.states, verdicts)

    def _of(self, library: Library, pathway: PathwayId) -> _Of:
        """Return what is known of a pathway of a bare library, at first nothing."""
        asked = (library, pathway)
        others = [each for each in self._found if (each.library, each.pathway) != asked]
        known = next((each for each in self._found if each not in others), _Of(*asked))
        self._found = [*others[1 - MOST_KEPT :], known]
        return known

    def _forget_unproven(self, known: _Of) -> None:
        """Keep nothing that hangs on what else was proved at the time: a limit was reached."""
        for rule in [rule for rule, each in known.verdicts.items() if isinstance(each, Unproven)]:
            del known.verdicts[rule]
