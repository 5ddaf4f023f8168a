"""A finding, choice, act, duty, kit item, source or phase that nobody has defined.

Also an outcome or pathway that a rule speaks of and that is nowhere to be come to.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from chamberwise.engine.checks.references import Of, Reference
from chamberwise.engine.checks.rules.book import Book, own_book
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.model.rule import ANY
from chamberwise.engine.model.words import Words

CODE = Code(
    "not-defined",
    Severity.ERROR,
    "A name nobody has defined",
    "A mistyped name ties a step to nothing: no rule, kit list or duty would hold for it.",
)

_TABLES = {
    Of.FINDING: "findings",
    Of.CHOICE: "choices",
    Of.ACT: "acts",
    Of.DUTY: "duties",
    Of.KIT: "kit",
    Of.SOURCE: "sources",
    Of.PHASE: "phases",
}


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every name that is not defined for this pathway."""
    if not subject.definitions_are_whole:
        return
    book = own_book(subject)
    for reference in subject.references:
        if reference.of in ENDS:
            yield from no_such_end(reference, book)
            continue
        if reference.value_of is not None:
            continue
        known = _known(subject, reference.of)
        if reference.name not in known and (known or reference.of is not Of.PHASE):
            message = f"{reference.of} `{reference.name}` is not defined"
            otherwise = _how_to_define(reference.of, reference.name)
            advice = did_you_mean(reference.name, known, otherwise)
            at_key = reference.pointer[-1] == reference.name
            yield subject.problem(CODE, reference.pointer, message, advice, at_key=at_key)


_EXAMPLES = {
    Of.ACT: "{title: What is done}",
    Of.DUTY: "{title: What the duty is called}",
    Of.KIT: "{title: What it is called}",
    Of.SOURCE: "{cite: Where it stands, mark: local}",
    Of.PHASE: "What the phase is called",
}


def _how_to_define(of: Of, name: str) -> str:
    example = f": `  {name}: {_EXAMPLES[of]}`" if of in _EXAMPLES else ""
    shown = " `chamberwise list --words` shows the shared ones." if of is not Of.PHASE else ""
    return f"Define it under `{_TABLES[of]}:` in this file{example}.{shown}"


def _known(subject: Subject, of: Of) -> Mapping[str, Any]:
    return subject.pathway.phases if of is Of.PHASE else of_words(subject.words, of)


def of_words(words: Words, of: Of) -> Mapping[str, Any]:
    """Return the words of one kind by name."""
    if of is Of.CHOICE:
        return {name: each for name, each in words.findings.items() if each.choice}
    tables: dict[Of, Mapping[str, Any]] = {
        Of.FINDING: words.findings,
        Of.ACT: words.acts,
        Of.DUTY: words.duties,
        Of.KIT: words.kit,
        Of.SOURCE: words.sources,
    }
    return tables[of]


ENDS = (Of.OUTCOME, Of.PATHWAY)
"""What rules alone name, and pathways define by being there."""


def no_such_end(reference: Reference, book: Book) -> Iterator[Problem]:
    """Yield a problem where a rule names an outcome or pathway that its walks do not come to."""
    if reference.of not in ENDS or not book.is_read:
        return
    if reference.of is Of.OUTCOME:
        known = [*sorted(book.doings.outcomes), ANY]
        listed, message = "Outcomes", f"no outcome of {book.where} is called `{reference.name}`"
    else:
        known = list(book.library.pathways)
        listed, message = "Pathways", f"there is no pathway `{reference.name}` in the library"
    if reference.name not in known:
        otherwise = f"{listed} are {', '.join(f'`{each}`' for each in known)}."
        advice = did_you_mean(reference.name, known, otherwise)
        yield book.problem(CODE, reference.pointer, message, advice)
