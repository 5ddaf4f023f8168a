"""A rule that speaks of what never comes about in the pathways it binds."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Set

from chamberwise.engine.checks.rules.book import Book
from chamberwise.engine.checks.rules.places import Said
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Pointer, Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

CODE = Code(
    "rule-says-nothing",
    Severity.WARNING,
    N_("A rule that speaks of what never comes about"),
    N_("It would be proved to hold, or could never hold, and nobody would be safer for it."),
)

_ADVICE = N_("Correct the name, or leave it out of the rule.")


def check(subject: Subject) -> Iterator[Problem]:
    """Yield such a problem for the rules of a pathway."""
    yield from of(subject.book)


def of(book: Book) -> Iterator[Problem]:
    """Yield a problem for every name in a happening that no step of the pathways brings about."""
    if not (book.rules and book.shows_all):
        return
    lines = book.doings.lines
    doers = {act for act, _who in lines}, {who for _act, who in lines}
    for _rule, said in book.said():
        for at, message in _vain(said, book, *doers):
            yield book.problem(CODE, (*said.pointer, *at), message, _(_ADVICE))


def _vain(
    said: Said, book: Book, acts: Set[str | None], duties: Set[str]
) -> Iterator[tuple[Pointer, str]]:
    happening, words, does = said.happening, book.words, book.doings
    lines, where = does.lines, book.where
    in_vain = [
        *_not_in(
            "act",
            happening.acts,
            words.acts,
            acts,
            _("no step of {where} does `%s`").format(where=where),
        ),
        *_not_in(
            "by",
            happening.by,
            words.duties,
            duties,
            _("no line of {where} is for `%s`").format(where=where),
        ),
        *_not_in(
            "warns of",
            happening.warns_of,
            words.acts,
            does.warned,
            _("no danger or warning of {where} guards `%s`").format(where=where),
        ),
        *_not_in(
            "asks",
            happening.asks,
            words.findings,
            does.asked,
            _("no step of {where} asks `%s`").format(where=where),
        ),
        *_not_in(
            "hands over to",
            happening.hands_over_to,
            book.library.pathways,
            does.handovers,
            _("no step of {where} hands over to `%s`").format(where=where),
        ),
        *_of_knowledge(said, book),
    ]
    yield from in_vain
    apart = any(act in acts for act in happening.acts) and any(
        who in duties for who in happening.by
    )
    if apart and not any(act in happening.acts and who in happening.by for act, who in lines):
        yield ("by",), _("no line of {where} has that act done by that duty").format(where=where)


def _of_knowledge(said: Said, book: Book) -> Iterator[tuple[Pointer, str]]:
    happening, words, does = said.happening, book.words, book.doings
    untold, settled = (
        _("no step of {where} asks `%s` or makes it known").format(where=book.where),
        _("no step of {where} makes `%s` stale").format(where=book.where),
    )
    for finding, _values in happening.surely.terms:
        yield from _not_in("surely", (finding,), words.findings, does.told, untold, by_key=True)
    yield from _not_in("known", happening.known, words.findings, does.told, untold)
    yield from _not_in("unless known", happening.unless_known, words.findings, does.told, untold)
    yield from _not_in("stale", happening.stale, words.findings, does.stale, settled)


def _not_in(
    key: str,
    names: Iterable[str],
    defined: Iterable[str],
    found: Iterable[str | None],
    message: str,
    *,
    by_key: bool = False,
) -> Iterator[tuple[Pointer, str]]:
    """Yield every name that is defined and never comes about; names nobody defined are told."""
    for place, name in enumerate(names):
        if name in defined and name not in found:
            yield (key, name if by_key else place), message % name
