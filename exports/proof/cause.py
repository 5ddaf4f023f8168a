"""What broke a rule, as one sentence about the moment at which it broke."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.moments import Moment
from chamberwise.engine.model.rule import ANY, Happening, Pattern
from chamberwise.exports.proof.happenings import (
    any_of_in_words,
    comes_in_words,
    happening_in_words,
)
from chamberwise.exports.proof.in_words import times_in_words
from chamberwise.exports.proof.telling import Telling

_AT_IT = {
    Pattern.ABSENCE: "{comes}",
    Pattern.BOUNDED_EXISTENCE: N_("{of} comes more than {times}"),
    Pattern.PRECEDENCE: N_("{of} comes, and {by} has not come before it"),
    Pattern.ALTERNATE_PRECEDENCE: N_("{of} comes, and {by} has not come anew before it"),
    Pattern.CHAIN_PRECEDENCE: N_("{of} comes, and the act directly before it was not {by}"),
    Pattern.NOT_CO_EXISTENCE: N_("{of} comes on one walk with {by}"),
}
_AT_THE_CLOSE = {
    Pattern.ABSENCE: N_("{closes} comes, and {of} came before it"),
    Pattern.UNIVERSALITY: N_("{closes} comes, and before it not every moment was {of}"),
    Pattern.EXISTENCE: N_("{closes} comes, and {of} has not come before it"),
    Pattern.BOUNDED_EXISTENCE: N_("{closes} comes, and {of} came more than {times} before it"),
    Pattern.PRECEDENCE: N_("{closes} comes, and before it {of} came without {by}"),
    Pattern.RESPONSE: N_("{closes} comes, and {by} has not come after {of}"),
}
_AT_THE_END = {
    Pattern.EXISTENCE: N_("{of} never came"),
    Pattern.RESPONSE: N_("{by} never came after {of}"),
    Pattern.CHAIN_RESPONSE: N_("no act came after {of}; {by} had to be the next"),
    Pattern.RESPONDED_EXISTENCE: N_("{of} came, and {by} never did"),
}


def cause(telling: Telling) -> str:
    """Return why the rule is broken at the moment at which it broke, without a full stop."""
    rule, library = telling.rule, telling.library
    pathway, moment = telling.counterexample.pathway, telling.moments[telling.broke_at]
    told = any_of_in_words(library, pathway, rule.of)
    by = any_of_in_words(library, pathway, rule.by)
    found = telling.matching(rule.of, moment)
    other = telling.matching(rule.by, moment)
    phrases = {
        "of": told,
        "by": by,
        "closes": any_of_in_words(library, pathway, rule.scope.closes),
        "times": times_in_words(rule.times),
    }
    if telling.counterexample.moment is None:
        ended = _AT_THE_END.get(rule.pattern, N_("the rule asks for more than came"))
        said = _(ended).format(**phrases)
        return _("the walk has ended, and {why}").format(why=said)
    if rule.pattern is Pattern.NOT_CO_EXISTENCE and found is None and other is not None:
        phrases |= {"by": told, "of": by}
        found = other
    if found is not None and rule.pattern in _AT_IT:
        one = _narrowed(found, moment)
        phrases["of"] = happening_in_words(library, pathway, one)
        phrases["comes"] = comes_in_words(library, pathway, (one,))
        return _(_AT_IT[rule.pattern]).format(**phrases)
    if telling.shows(rule.scope.closes, moment) and rule.pattern in _AT_THE_CLOSE:
        return _(_AT_THE_CLOSE[rule.pattern]).format(**phrases)
    if rule.pattern is Pattern.CHAIN_RESPONSE:
        return _("this act comes directly after {of}; it had to be {by}").format(of=told, by=by)
    if rule.pattern is Pattern.UNIVERSALITY:
        return _("this moment is not {of}").format(of=told)
    return _("it breaks")


def _narrowed(happening: Happening, moment: Moment) -> Happening:
    """Return a happening with, of several names, the one that the moment shows."""
    is_any = ANY in happening.outcomes
    return replace(
        happening,
        acts=(moment.act,) if happening.acts and moment.act else happening.acts,
        by=(moment.by,) if happening.by and moment.by else happening.by,
        asks=(moment.asks,) if happening.asks and moment.asks else happening.asks,
        outcomes=(moment.place.step,) if happening.outcomes and not is_any else happening.outcomes,
    )
