"""Proving rules on every walk of a pathway, handovers followed."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from chamberwise.engine.exploration.unswept import unswept
from chamberwise.engine.language.numbers import thousands
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.proof.after_edit import begin_with_what_stands
from chamberwise.engine.proof.closer import Closer
from chamberwise.engine.proof.counterexample import counterexample
from chamberwise.engine.proof.ground import ground_of
from chamberwise.engine.proof.monitors import monitors
from chamberwise.engine.proof.rules import rules_for
from chamberwise.engine.proof.run import Run, run
from chamberwise.engine.proof.spoken_of import tracked_fields
from chamberwise.engine.proof.standing import Standing
from chamberwise.engine.proof.verdict import Holds, Proof, Unproven, Verdict, Violated

MOST_STATES = 3_000_000


@unswept()
def prove(
    library: Library,
    pathway: PathwayId,
    rules: Sequence[Rule] | None = None,
    *,
    stop_at_first: bool = False,
    most: int = MOST_STATES,
    reduced: bool = True,
    tell: Callable[[Mapping[Rule, Verdict]], None] | None = None,
    standing: Standing | None = None,
) -> Proof:
    """Return the verdicts on some rules, or on all that bind the pathway.

    Names have to be defined. First no more is looked at than a rule needs: there are more walks
    then, and what holds on them all holds. Only what breaks is looked at again with everything
    known and counted, shorter walks first. With `stop_at_first` that search ends with the first
    rule broken, and what is not settled by then is unproven; `reduced` forgets what can no longer
    be read. `tell` is told, as it goes on, the verdicts that are settled so far. `standing` has
    what was proved of the pathway before an edit, of the same rules, and remembers what is proved.
    """
    rules = tuple(rules_for(library, pathway) if rules is None else rules)
    ground = ground_of(library, pathway, tracked_fields(library, pathway, rules))
    claims = monitors(rules)
    closer = Closer(ground, claims, most, reduced)
    broke: dict[Rule, Verdict] = {}
    if tell is not None:
        closer.tell = lambda so_far: tell({**broke, **_settled(rules, so_far)})
    if standing is not None:
        broke |= begin_with_what_stands(standing, closer, library, rules)
    if not (broke and stop_at_first):
        closer.judge()
    found = {**broke, **_settled(rules, closer)}
    doubtful = [rule for rule in rules if rule not in found]
    seen = closer.states
    if broke and stop_at_first:
        found |= {rule: Unproven(rule, _another_broke()) for rule in doubtful}
    elif doubtful:
        exactly = run(
            library, pathway, doubtful, most, stop_at_first=stop_at_first, reduced=reduced
        )
        seen += exactly.found.states
        for at, rule in enumerate(doubtful):
            found[rule] = _verdict(library, exactly, at, rule)
            if tell is not None:
                tell(found)
    return Proof(pathway, seen, tuple([found[rule] for rule in rules]))


def _settled(rules: Sequence[Rule], closer: Closer) -> dict[Rule, Verdict]:
    """Return the rules that hold by now and of which it is known whether they arise."""
    claims = closer.claims
    vacuous = {claims[at].rule for at in closer.proved if claims[at].is_trigger}
    open_still = {
        claim.rule
        for number, claim in enumerate(claims)
        if number not in closer.proved and number not in closer.arising
    }
    return {
        rule: Holds(rule, number in vacuous)
        for number, rule in enumerate(rules)
        if number not in open_still
    }


def _verdict(library: Library, found: Run, number: int, rule: Rule) -> Verdict:
    if found.breaks(number):
        return Violated(rule, counterexample(library, found, number, rule))
    if found.holds(number):
        return Holds(rule, found.is_vacuous(number))
    if found.found.stopped:
        return Unproven(
            rule,
            _("there are more than {states} states").format(states=thousands(found.found.states)),
        )
    return Unproven(rule, _another_broke())


def _another_broke() -> str:
    return _("the search ended with the first rule that broke")
