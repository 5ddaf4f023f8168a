"""A finding, choice, act, duty, kit item, source or phase that nobody has defined.

Also an outcome or pathway that a rule speaks of and that is nowhere to be come to.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from chamberwise.engine.checks.references import Of, Reference, in_words
from chamberwise.engine.checks.rules.book import Book
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.rule import ANY
from chamberwise.engine.model.words import Words

CODE = Code(
    "not-defined",
    Severity.ERROR,
    N_("A name nobody has defined"),
    N_("A mistyped name ties a step to nothing: no rule, kit list or duty would hold for it."),
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
    book = subject.book
    for reference in subject.references:
        if reference.of in ENDS:
            yield from no_such_end(reference, book)
            continue
        if reference.value_of is not None:
            continue
        known = _known(subject, reference.of)
        if reference.name not in known and (known or reference.of is not Of.PHASE):
            message = _("{of} `{name}` is not defined").format(
                of=in_words(reference.of), name=reference.name
            )
            otherwise = _how_to_define(reference.of, reference.name)
            advice = did_you_mean(reference.name, known, otherwise)
            at_key = reference.pointer[-1] == reference.name
            yield subject.problem(CODE, reference.pointer, message, advice, at_key=at_key)


_EXAMPLES = {
    Of.ACT: N_("{title: What is done}"),
    Of.DUTY: N_("{title: What the duty is called}"),
    Of.KIT: N_("{title: What it is called}"),
    Of.SOURCE: N_("{cite: Where it stands, mark: local}"),
    Of.PHASE: N_("What the phase is called"),
}


def _how_to_define(of: Of, name: str) -> str:
    example = f": `  {name}: {_(_EXAMPLES[of])}`" if of in _EXAMPLES else ""
    shown = _(" `chamberwise list --words` shows the shared ones.") if of is not Of.PHASE else ""
    return _("Define it under `{table}:` in this file{example}.{shown}").format(
        table=_TABLES[of], example=example, shown=shown
    )


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
        message = _("no outcome of {where} is called `{name}`")
        otherwise = _("Outcomes are {listed}.")
    else:
        known = list(book.library.pathways)
        message = _("there is no pathway `{name}` in the library")
        otherwise = _("Pathways are {listed}.")
    if reference.name not in known:
        listed = ", ".join(f"`{each}`" for each in known)
        advice = did_you_mean(reference.name, known, otherwise.format(listed=listed))
        message = message.format(where=book.where, name=reference.name)
        yield book.problem(CODE, reference.pointer, message, advice)
