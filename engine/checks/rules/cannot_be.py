"""A happening of a rule that asks for what cannot be so at one moment."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from chamberwise.engine.checks.rules.book import Book
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.rule import CHAINS, Happening, Pattern

CODE = Code(
    "rule-cannot-be",
    Severity.ERROR,
    N_("A rule on what cannot be so at once"),
    N_("It would be proved to hold of every pathway, and it stands against nothing."),
)

_AT_ONCE = N_(
    "All that is said in a happening is so at one moment. Make a list of two, or a scope."
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield such a problem for the rules of a pathway."""
    yield from of(subject.book)


def of(book: Book) -> Iterator[Problem]:
    """Yield a problem for every happening of which no moment can be one."""
    for rule, said in book.said():
        kinds = list(_kinds(said.happening))
        for one, other in combinations(kinds, 2):
            message = _("no moment has both `{one}` and `{other}`").format(one=one, other=other)
            yield book.problem(CODE, (*said.pointer, other), message, _(_AT_ONCE))
        if rule.pattern in CHAINS and kinds and kinds[0] not in _OF_LINES:
            message = _("a {pattern} rule looks at acts alone, and `{kind}` is none").format(
                pattern=rule.pattern, kind=kinds[0]
            )
            advice = _without_directly(rule.pattern)
            yield book.problem(CODE, (*said.pointer, kinds[0]), message, advice)
        for key, finding in _at_odds(said.happening, book):
            message = _("`{finding}` cannot be known and {key} at one moment").format(
                finding=finding, key=key
            )
            yield book.problem(CODE, (*said.pointer, key), message, _(_AT_ONCE))


_OF_LINES = ("act", "by")


def _kinds(happening: Happening) -> Iterator[str]:
    """Yield the key of each kind of moment that is asked for; a moment is of one kind."""
    if happening.acts or happening.by:
        yield "act" if happening.acts else "by"
    if happening.asks:
        yield "asks"
    if happening.hands_over_to:
        yield "hands over to"
    if happening.outcomes:
        yield "outcome"


def _at_odds(happening: Happening, book: Book) -> Iterator[tuple[str, str]]:
    """Yield each finding of which something is to be known, and that is to be stale or unknown."""
    known = {*happening.known, *_narrowed(happening, book)}
    for key, names in (("stale", happening.stale), ("unknown", happening.unknown)):
        yield from ((key, name) for name in names if name in known)


def _narrowed(happening: Happening, book: Book) -> Iterator[str]:
    for name, values in happening.surely.terms:
        finding = book.words.findings.get(name)
        if finding and any(value.id not in values for value in finding.values):
            yield name


def _without_directly(pattern: Pattern) -> str:
    other = Pattern.PRECEDENCE if pattern is Pattern.CHAIN_PRECEDENCE else Pattern.RESPONSE
    return _("Name an act, or write a {other} rule.").format(other=other)
