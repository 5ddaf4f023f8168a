"""A rule in one plain sentence, built from its pattern, what it speaks of, and its scope."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import AnyOf, Extent, Pattern, Rule
from chamberwise.engine.model.step import PathwayId
from chamberwise.exports.language.joining import alternatives
from chamberwise.exports.proof.happenings import (
    any_of_in_words,
    comes_in_words,
    known_in_words,
    says_what_is_known_alone,
)

_BODIES = {
    Pattern.ABSENCE: "{never}",
    Pattern.UNIVERSALITY: N_("every moment is {of}"),
    Pattern.EXISTENCE: N_("{of} comes at some time"),
    Pattern.BOUNDED_EXISTENCE: N_("{of} comes {times} at most"),
    Pattern.PRECEDENCE: N_("{of} comes only after {by} has come"),
    Pattern.RESPONSE: N_("each time after {of}{so} {by} comes later"),
    Pattern.ALTERNATE_PRECEDENCE: N_("each time before {of}{so} {by} comes anew"),
    Pattern.CHAIN_PRECEDENCE: N_("the act directly before {of} is always {by}"),
    Pattern.CHAIN_RESPONSE: N_("the act directly after {of} is always {by}"),
    Pattern.RESPONDED_EXISTENCE: N_("a walk on which {of} comes has {by} too, before or after it"),
    Pattern.NOT_CO_EXISTENCE: N_("{of} and {by} never come on the same walk"),
}

_SCOPES = {
    Extent.GLOBALLY: "",
    Extent.BEFORE: N_("before {closes} comes for the first time, if it does: "),
    Extent.AFTER: N_("once {opens} has come: "),
    Extent.BETWEEN: N_("each time between {opens} and {closes}: "),
    Extent.AFTER_UNTIL: N_("each time after {opens}, until {closes} comes: "),
}
_WITHOUT_END = N_("each time after {opens}: ")


def rule_in_words(library: Library, pathway: PathwayId, rule: Rule) -> str:
    """Return what a rule asks of every walk, as one sentence."""
    phrases = {
        "of": any_of_in_words(library, pathway, rule.of),
        "by": any_of_in_words(library, pathway, rule.by),
        "opens": any_of_in_words(library, pathway, rule.scope.opens),
        "closes": any_of_in_words(library, pathway, rule.scope.closes),
        "times": times_in_words(rule.times),
    }
    phrases["so"] = ":" if "," in phrases["of"] + phrases["by"] else ","
    phrases["never"] = comes_in_words(library, pathway, rule.of, never=True)
    extent = rule.scope.extent
    endless = extent is Extent.AFTER_UNTIL and not rule.scope.closes
    scope = _WITHOUT_END if endless else _SCOPES[extent]
    body = _(_BODIES[rule.pattern]).format(**phrases)
    if rule.pattern is Pattern.UNIVERSALITY and all(map(says_what_is_known_alone, rule.of)):
        body = _("at every moment {known}").format(known=_known(library, pathway, rule.of))
    return _sentence((_(scope).format(**phrases) if scope else "") + body)


def _known(library: Library, pathway: PathwayId, any_of: AnyOf) -> str:
    return alternatives(known_in_words(library, pathway, each) for each in any_of)


def times_in_words(times: int) -> str:
    """Return how often, e.g. `once`.

    >>> times_in_words(1), times_in_words(2), times_in_words(3)
    ('once', 'twice', '3 times')
    """
    return {1: _("once"), 2: _("twice")}.get(times, _("{number} times").format(number=times))


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}."
