"""From a proof to what is shown of it. This room alone knows the engine; renderers do not."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from datetime import date
from types import MappingProxyType

from chamberwise.engine.diagnostics.problem import Span
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.rule import HarmSeverity, Rule, RuleId
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.proof.rules import switched_off
from chamberwise.engine.proof.verdict import Holds, Proof, Unproven, Verdict, Violated
from chamberwise.engine.reading.library import Loaded
from chamberwise.exports.control.content import day
from chamberwise.exports.proof.content import ProofShown, RuleShown, Story, VerdictWord
from chamberwise.exports.proof.happenings import long_lists
from chamberwise.exports.proof.in_words import rule_in_words
from chamberwise.exports.proof.story import story_of
from chamberwise.exports.proof.telling import happenings_of
from chamberwise.exports.record.cited import cited
from chamberwise.exports.record.standing import marks

_ORDER = tuple(VerdictWord)
_WORST_FIRST = tuple(str(each) for each in HarmSeverity)


def proof_shown(
    loaded: Loaded,
    proof: Proof,
    today: date,
    replay: Callable[[str], str],
    brought_by: Mapping[RuleId, tuple[str, ...]] = MappingProxyType({}),
) -> ProofShown:
    """Return a proof as it is shown; `replay` makes the command that replays a key.

    `brought_by` names, of a broken rule, the places in the unit's sheet that break it.
    """
    rules = [
        replace(
            rule_shown(loaded, proof.pathway, each, replay),
            brought_by=brought_by.get(each.rule.id, ()),
        )
        for each in proof.verdicts
    ]
    return _shown(loaded, proof, today, rules)


def proof_under_way(
    loaded: Loaded, proof: Proof, still: Iterable[Rule], today: date, replay: Callable[[str], str]
) -> ProofShown:
    """Return a proof as far as it has come; `still` are the rules that have no verdict yet."""
    rules = [rule_shown(loaded, proof.pathway, each, replay) for each in proof.verdicts]
    rules += [
        _rule_shown(loaded, proof.pathway, each, VerdictWord.BEING_PROVED, None, "")
        for each in still
    ]
    return _shown(loaded, proof, today, rules)


def _shown(loaded: Loaded, proof: Proof, today: date, rules: list[RuleShown]) -> ProofShown:
    pathway = loaded.library.pathways[proof.pathway]
    rules.sort(key=_reading_order)
    return ProofShown(
        pathway=pathway.id,
        title=pathway.title,
        edition=pathway.edition,
        marks=marks(pathway, today),
        states=proof.states,
        rules=tuple(rules),
        switched_off=tuple(
            _("{title} ({name}): switched off by {who} on {day}. {why}").format(
                title=rule.title, name=name, who=off.by, day=day(off.on), why=off.because
            )
            for name, (rule, off) in switched_off(loaded.library, proof.pathway).items()
        ),
    )


def _reading_order(rule: RuleShown) -> tuple[int, int, bool]:
    """Return where a rule stands: the broken ones first, of those the worst harm.

    House rules that do not arise here come last.
    """
    idle = rule.verdict is VerdictWord.DOES_NOT_ARISE and not rule.is_finding
    place = len(_ORDER) if idle else _ORDER.index(rule.verdict)
    return place, _WORST_FIRST.index(rule.severity), rule.is_house_rule


def rule_shown(
    loaded: Loaded, pathway: PathwayId, verdict: Verdict, replay: Callable[[str], str]
) -> RuleShown:
    """Return one rule with its verdict on a pathway."""
    story = None
    if isinstance(verdict, Violated):
        story = story_of(loaded, verdict.rule, verdict.counterexample, replay)
    reason = _(verdict.reason) if isinstance(verdict, Unproven) else ""
    return _rule_shown(loaded, pathway, verdict.rule, _word(verdict), story, reason)


def _rule_shown(
    loaded: Loaded,
    pathway: PathwayId,
    rule: Rule,
    word: VerdictWord,
    story: Story | None,
    reason: str,
) -> RuleShown:
    library = loaded.library
    file, span = where_written(loaded, pathway, rule)
    return RuleShown(
        id=rule.id,
        title=rule.title,
        is_house_rule=rule.id in library.shared.rules,
        verdict=word,
        meaning=rule_in_words(library, pathway, rule),
        lists=tuple(long_lists(library, pathway, happenings_of(rule))),
        harm=rule.harm,
        severity=rule.severity.value,
        instead=rule.instead,
        sources=cited(library.words(pathway), rule.sources),
        file=file,
        line=span.line if span else 0,
        column=span.column if span else 0,
        story=story,
        reason=reason,
    )


def _word(verdict: Verdict) -> VerdictWord:
    match verdict:
        case Holds(is_vacuous=vacuous):
            return VerdictWord.DOES_NOT_ARISE if vacuous else VerdictWord.HOLDS
        case Violated():
            return VerdictWord.BROKEN
        case Unproven():
            return VerdictWord.UNPROVEN


def where_written(loaded: Loaded, pathway: PathwayId, rule: Rule) -> tuple[str, Span | None]:
    """Return the file a rule stands in and the place of its name there."""
    shared = loaded.defined.get(("rules", rule.id))
    if shared is not None and rule.id in loaded.library.shared.rules:
        name, pointer = shared
        return name, loaded.files[name].tree.span(pointer, at_key=True)
    tree, at = loaded.source(pathway).tree, ("rules", rule.id)
    return tree.source(at).file, tree.span(at, at_key=True)
