"""A rule that wants every moment to be one act, question or outcome."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.rules.book import Book
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.rule import Happening, Pattern

CODE = Code(
    "not-every-moment",
    Severity.WARNING,
    N_("A rule that nearly every moment breaks"),
    N_("It would be reported broken at the first step, and the harm it means would be overlooked."),
)

_ADVICE = N_(
    "Write `absence:` with `never:`, the same happening, and what makes it safe "
    "under `unless surely` or `unless known`."
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield such a problem for the rules of a pathway."""
    yield from of(subject.book)


def of(book: Book) -> Iterator[Problem]:
    """Yield a problem for every universality rule each of whose happenings names an event."""
    for rule in book.rules:
        universal = rule.pattern is Pattern.UNIVERSALITY and bool(rule.of)
        if universal and all(each.event != Happening() for each in rule.of):
            message = _("not every moment of a walk is an act, a question or an outcome of its own")
            at = ("rules", rule.id, str(rule.pattern), "always")
            yield book.problem(CODE, at, message, _(_ADVICE))
