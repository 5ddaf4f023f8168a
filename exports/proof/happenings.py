"""What a rule speaks of, in words: acts, questions, endings, and what is known meanwhile."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.rule import ANY, AnyOf, Happening
from chamberwise.engine.model.step import PathwayId, StepId
from chamberwise.engine.model.words import FindingId, Words
from chamberwise.exports.language.joining import inside
from chamberwise.exports.record.naming import (
    act_title,
    duty_title,
    finding_title,
    pathway_title,
    step_name,
)

MOST_IN_A_SENTENCE = 4
IS_SURELY = N_("{finding} is surely {values}")
MAY_BE = N_("{finding} may be {values}")
IS_KNOWN = N_("{finding} is known")


def quoted(text: str) -> str:
    """Return text in quotation marks."""
    return f"“{text}”"


def either(phrases: Iterable[str]) -> str:
    """Return phrases joined by commas and "or".

    >>> either(["A", "B", "C"])
    'A, B or C'
    """
    return _joined(phrases, _("{several} or {last}"))


def all_of(phrases: Iterable[str]) -> str:
    """Return phrases joined by commas and "and"."""
    return _joined(phrases, _("{several} and {last}"))


def _joined(phrases: Iterable[str], text: str) -> str:
    *first, last = phrases
    return text.format(several=", ".join(first), last=last) if first else last


def any_of_in_words(library: Library, pathway: PathwayId, any_of: AnyOf) -> str:
    """Return one of several happenings as a noun, e.g. `“Withdraw the tip” or the handover`."""
    if not any_of:
        return _("nothing")
    words = [happening_in_words(library, pathway, each) for each in any_of]
    if len(any_of) > 1:
        words = [
            said if each == each.event else f"({said})"
            for each, said in zip(any_of, words, strict=True)
        ]
    return either(words)


def happening_in_words(library: Library, pathway: PathwayId, happening: Happening) -> str:
    """Return one happening as a noun, with what is known meanwhile."""
    if told := _answer(library, pathway, happening):
        return told
    event = _event(library, pathway, happening) or _("a moment")
    return event + _meanwhile(library, pathway, happening)


def comes_in_words(
    library: Library, pathway: PathwayId, any_of: AnyOf, *, never: bool = False
) -> str:
    """Return that one of several happenings comes, or never does.

    What is known meanwhile stands behind it: `“Cut” never comes while Support is unknown`.
    """
    comes = _("{what} never comes{meanwhile}") if never else _("{what} comes{meanwhile}")
    if len(any_of) != 1 or any_of[0].asks:
        return comes.format(what=any_of_in_words(library, pathway, any_of), meanwhile="")
    happening = any_of[0]
    if happening.event == Happening():
        told = happening_in_words(library, pathway, happening)
        text = _("it never comes to {moment}") if never else _("it comes to {moment}")
        return text.format(moment=told)
    meanwhile = _meanwhile(library, pathway, happening)
    if never and len(happening.acts) > MOST_IN_A_SENTENCE:
        none = _event(library, pathway, happening, _("none of {number} acts (listed below)"))
        return _("{what} comes{meanwhile}").format(what=none, meanwhile=meanwhile)
    event = _event(library, pathway, happening)
    return comes.format(what=event, meanwhile=meanwhile)


def long_lists(library: Library, pathway: PathwayId, happenings: Iterable[Happening]) -> list[str]:
    """Return every list of acts that is too long to stand in a sentence, each once."""
    words = library.words(pathway)
    long = dict.fromkeys(each.acts for each in happenings if len(each.acts) > MOST_IN_A_SENTENCE)
    return [
        _("{number} acts: {acts}").format(
            number=len(acts), acts=all_of(quoted(act_title(words, act)) for act in acts)
        )
        for acts in long
    ]


def _answer(library: Library, pathway: PathwayId, happening: Happening) -> str:
    """Return a question of which only the finding asked matters; nothing where more does."""
    words = library.words(pathway)
    terms = (*happening.surely.terms, *happening.possibly.terms)
    plain = Happening(asks=happening.asks, surely=happening.surely, possibly=happening.possibly)
    if len(happening.asks) != 1 or len(terms) != 1 or happening != plain:
        return ""
    asked, values = terms[0]
    if asked != happening.asks[0]:
        return ""
    said = values_in_words(words, asked, values)
    answer = _("an answer on {finding} that leaves {values} possible")
    if happening.surely.terms:
        answer = _("an answer on {finding} that makes it surely {values}")
    return answer.format(finding=quoted(finding_title(words, asked)), values=said)


def _meanwhile(library: Library, pathway: PathwayId, happening: Happening) -> str:
    known = known_in_words(library, pathway, happening)
    unless = unless_in_words(library, pathway, happening)
    is_moment = happening.event == Happening()
    link = _(" at which {known}") if is_moment else _(" while {known}")
    if happening.asks:
        link = _(" after which {known}")
    return (link.format(known=known) if known else "") + (
        _(", unless {known}").format(known=unless) if unless else ""
    )


def says_what_is_known_alone(happening: Happening) -> bool:
    """Whether it names nothing that happens and no exception, but only what is known."""
    excepted = happening.unless_surely.terms or happening.unless_possibly.terms
    return happening.event == Happening() and not (excepted or happening.unless_known)


def known_in_words(library: Library, pathway: PathwayId, happening: Happening) -> str:
    """Return what must be known or unknown for a happening, as a clause."""
    words = library.words(pathway)
    clauses = [
        *_terms(words, happening.surely, IS_SURELY),
        *_terms(words, happening.possibly, MAY_BE),
        *(_(IS_KNOWN).format(finding=finding_title(words, name)) for name in happening.known),
        *(
            _("{finding} is stale").format(finding=finding_title(words, name))
            for name in happening.stale
        ),
        *(
            _("{finding} is unknown").format(finding=finding_title(words, name))
            for name in happening.unknown
        ),
    ]
    return all_of(clauses) if clauses else ""


def unless_in_words(library: Library, pathway: PathwayId, happening: Happening) -> str:
    """Return what makes a happening harmless, as a clause."""
    words = library.words(pathway)
    groups = [
        list(_terms(words, happening.unless_surely, IS_SURELY)),
        list(_terms(words, happening.unless_possibly, MAY_BE)),
        [_(IS_KNOWN).format(finding=finding_title(words, name)) for name in happening.unless_known],
    ]
    return either(all_of(each) for each in groups if each) if any(groups) else ""


def _terms(words: Words, condition: Condition, text: str) -> Iterator[str]:
    for name, values in condition.terms:
        yield _(text).format(
            finding=finding_title(words, name), values=values_in_words(words, name, values)
        )


def values_in_words(words: Words, name: FindingId, values: Sequence[str]) -> str:
    """Return some values of a finding by their labels, in quotes, joined by "or"."""
    finding = words.findings.get(name)
    found = [finding.value(value) if finding else None for value in values]
    labels = (each.label if each else value for each, value in zip(found, values, strict=True))
    return either(map(quoted, labels))


def _event(
    library: Library, pathway: PathwayId, happening: Happening, many: str | None = None
) -> str:
    words = library.words(pathway)
    warned = either(quoted(act_title(words, act)) for act in happening.warns_of or ("",))
    who = either(
        _("the {duty}").format(duty=inside(duty_title(words, name)))
        for name in happening.by or ("",)
    )
    if happening.acts:
        told = _acts(words, happening.acts, many)
        if happening.by:
            told = _("{act} by {who}").format(act=told, who=who)
        if happening.warns_of:
            told = _("{act} under a danger or warning of {acts}").format(act=told, acts=warned)
        return told
    if happening.by:
        return _("anything that {who} does or says").format(who=who)
    if happening.warns_of:
        return _("a danger or warning of {acts}").format(acts=warned)
    if happening.asks:
        asked = either(quoted(finding_title(words, name)) for name in happening.asks)
        return _("the question of {findings}").format(findings=asked)
    return _of_the_way(library, pathway, happening)


def _acts(words: Words, acts: Sequence[str], many: str | None) -> str:
    if len(acts) > MOST_IN_A_SENTENCE:
        return (many or _("any of {number} acts (listed below)")).format(number=len(acts))
    return either(quoted(act_title(words, act)) for act in acts)


def _of_the_way(library: Library, pathway: PathwayId, happening: Happening) -> str:
    if ANY in happening.outcomes:
        return _("the end of the walk")
    if happening.outcomes:
        ends = (quoted(_outcome_title(library, pathway, name)) for name in happening.outcomes)
        return _("the outcome {ends}").format(ends=either(ends))
    if happening.hands_over_to:
        there = (quoted(pathway_title(library, name)) for name in happening.hands_over_to)
        return _("the handover to {charts}").format(charts=either(there))
    return ""


def _outcome_title(library: Library, pathway: PathwayId, outcome: StepId) -> str:
    for name in (pathway, *library.pathways):
        if outcome in library.pathways[name].steps:
            return step_name(library, Place(name, outcome))
    return outcome
