"""What a rule speaks of, in words: acts, questions, endings, and what is known meanwhile."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.rule import ANY, AnyOf, Happening
from chamberwise.engine.model.step import PathwayId, StepId
from chamberwise.engine.model.words import FindingId, Words
from chamberwise.exports.record.naming import (
    act_title,
    duty_title,
    finding_title,
    pathway_title,
    step_name,
)

MOST_IN_A_SENTENCE = 4
ANY_OF = "any of "


def quoted(text: str) -> str:
    """Return text in quotation marks."""
    return f"“{text}”"


def either(phrases: Iterable[str]) -> str:
    """Return phrases joined by commas and "or".

    >>> either(["A", "B", "C"])
    'A, B or C'
    """
    return _joined(phrases, "or")


def _joined(phrases: Iterable[str], word: str) -> str:
    *first, last = phrases
    return f"{', '.join(first)} {word} {last}" if first else last


def any_of_in_words(library: Library, pathway: PathwayId, any_of: AnyOf) -> str:
    """Return one of several happenings as a noun, e.g. `“Withdraw the tip” or the handover`."""
    if not any_of:
        return "nothing"
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
    event = _event(library, pathway, happening) or "a moment"
    return event + _meanwhile(library, pathway, happening)


def comes_in_words(library: Library, pathway: PathwayId, any_of: AnyOf, comes: str) -> str:
    """Return that one of several happenings comes, or never does; `comes` says which.

    What is known meanwhile stands behind it: `“Cut” never comes while Support is unknown`.
    """
    if len(any_of) != 1:
        return f"{any_of_in_words(library, pathway, any_of)} {comes}"
    happening, never = any_of[0], "never" in comes
    if happening.event == Happening():
        told = happening_in_words(library, pathway, happening)
        return f"it never comes to {told}" if never else f"it comes to {told}"
    if happening.asks:
        return f"{happening_in_words(library, pathway, happening)} {comes}"
    event = _event(library, pathway, happening)
    if never and event.startswith(ANY_OF):
        event, comes = f"none of {event.removeprefix(ANY_OF)}", "comes"
    return f"{event} {comes}{_meanwhile(library, pathway, happening)}"


def long_lists(library: Library, pathway: PathwayId, happenings: Iterable[Happening]) -> list[str]:
    """Return every list of acts that is too long to stand in a sentence, each once."""
    words = library.words(pathway)
    long = dict.fromkeys(each.acts for each in happenings if len(each.acts) > MOST_IN_A_SENTENCE)
    return [
        f"{len(acts)} acts: {_joined((quoted(act_title(words, act)) for act in acts), 'and')}"
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
    answer = f"an answer on {quoted(finding_title(words, asked))}"
    if happening.surely.terms:
        return f"{answer} that makes it surely {said}"
    return f"{answer} that leaves {said} possible"


def _meanwhile(library: Library, pathway: PathwayId, happening: Happening) -> str:
    known = known_in_words(library, pathway, happening)
    unless = unless_in_words(library, pathway, happening)
    is_moment = happening.event == Happening()
    link = " after which" if happening.asks else " at which" if is_moment else " while"
    return (f"{link} {known}" if known else "") + (f", unless {unless}" if unless else "")


def says_what_is_known_alone(happening: Happening) -> bool:
    """Whether it names nothing that happens and no exception, but only what is known."""
    excepted = happening.unless_surely.terms or happening.unless_possibly.terms
    return happening.event == Happening() and not (excepted or happening.unless_known)


def known_in_words(library: Library, pathway: PathwayId, happening: Happening) -> str:
    """Return what must be known or unknown for a happening, as a clause."""
    words = library.words(pathway)
    clauses = [
        *_terms(words, happening.surely, "is surely"),
        *_terms(words, happening.possibly, "may be"),
        *(f"{finding_title(words, name)} is known" for name in happening.known),
        *(f"{finding_title(words, name)} is stale" for name in happening.stale),
        *(f"{finding_title(words, name)} is unknown" for name in happening.unknown),
    ]
    return _joined(clauses, "and") if clauses else ""


def unless_in_words(library: Library, pathway: PathwayId, happening: Happening) -> str:
    """Return what makes a happening harmless, as a clause."""
    words = library.words(pathway)
    groups = [
        list(_terms(words, happening.unless_surely, "is surely")),
        list(_terms(words, happening.unless_possibly, "may be")),
        [f"{finding_title(words, name)} is known" for name in happening.unless_known],
    ]
    return either(_joined(each, "and") for each in groups if each) if any(groups) else ""


def _terms(words: Words, condition: Condition, verb: str) -> Iterator[str]:
    for name, values in condition.terms:
        yield f"{finding_title(words, name)} {verb} {values_in_words(words, name, values)}"


def values_in_words(words: Words, name: FindingId, values: Sequence[str]) -> str:
    """Return some values of a finding by their labels, in quotes, joined by "or"."""
    finding = words.findings.get(name)
    found = [finding.value(value) if finding else None for value in values]
    labels = (each.label if each else value for each, value in zip(found, values, strict=True))
    return either(map(quoted, labels))


def _event(library: Library, pathway: PathwayId, happening: Happening) -> str:
    words = library.words(pathway)
    warned = either(quoted(act_title(words, act)) for act in happening.warns_of or ("",))
    who = either(f"the {_small(duty_title(words, name))}" for name in happening.by or ("",))
    if happening.acts:
        told = _acts(words, happening.acts)
        told += f" by {who}" if happening.by else ""
        return told + (f" under a danger or warning of {warned}" if happening.warns_of else "")
    if happening.by:
        return f"anything that {who} does or says"
    if happening.warns_of:
        return f"a danger or warning of {warned}"
    if happening.asks:
        asked = either(quoted(finding_title(words, name)) for name in happening.asks)
        return f"the question of {asked}"
    return _of_the_way(library, pathway, happening)


def _acts(words: Words, acts: Sequence[str]) -> str:
    if len(acts) > MOST_IN_A_SENTENCE:
        return f"{ANY_OF}{len(acts)} acts (listed below)"
    return either(quoted(act_title(words, act)) for act in acts)


def _of_the_way(library: Library, pathway: PathwayId, happening: Happening) -> str:
    if ANY in happening.outcomes:
        return "the end of the walk"
    if happening.outcomes:
        ends = (quoted(_outcome_title(library, pathway, name)) for name in happening.outcomes)
        return f"the outcome {either(ends)}"
    if happening.hands_over_to:
        there = (quoted(pathway_title(library, name)) for name in happening.hands_over_to)
        return f"the handover to {either(there)}"
    return ""


def _outcome_title(library: Library, pathway: PathwayId, outcome: StepId) -> str:
    for name in (pathway, *library.pathways):
        if outcome in library.pathways[name].steps:
            return step_name(library, Place(name, outcome))
    return outcome


def _small(title: str) -> str:
    return title[:1].lower() + title[1:]
