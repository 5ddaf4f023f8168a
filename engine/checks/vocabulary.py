"""Checks on a file of shared words: names it uses, words no pathway uses, and its house rules."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from functools import lru_cache

from chamberwise.engine.checks.evidence.no_source import unsourced
from chamberwise.engine.checks.names import never_used, no_such_value, not_defined
from chamberwise.engine.checks.references import Of, Reference, in_words, of_words, references
from chamberwise.engine.checks.rules import cannot_be, not_every_moment, says_nothing
from chamberwise.engine.checks.rules.book import Book, house_book
from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.words import Words
from chamberwise.engine.reading.library import File, Loaded


def check_words(loaded: Loaded, file: File) -> Iterator[Problem]:
    """Yield every problem of a vocabulary file's names and house rules."""
    named = tuple(of_words(file.words or Words()))
    yield from undefined(loaded, file, named)
    yield from _unused(loaded, file)
    yield from _of_rules(house_book(loaded, file), named)
    if file.is_whole:
        yield from unsourced(file.words or Words(), file.tree)


def _of_rules(book: Book, named: Iterable[Reference]) -> Iterator[Problem]:
    yield from cannot_be.of(book)
    yield from not_every_moment.of(book)
    yield from says_nothing.of(book)
    for reference in named:
        yield from not_defined.no_such_end(reference, book)


def undefined(
    loaded: Loaded, file: File, named: Iterable[Reference] | None = None
) -> Iterator[Problem]:
    """Yield a problem for every word that a vocabulary file uses and nobody has defined."""
    if not all(each.defines_all for each in loaded.vocabulary):
        return
    for reference in of_words(file.words or Words()) if named is None else named:
        if reference.of not in not_defined.ENDS:
            yield from _undefined(reference, loaded.library.shared, file)


def _undefined(reference: Reference, shared: Words, file: File) -> Iterator[Problem]:
    finding = shared.findings.get(reference.value_of or "")
    if reference.value_of is None:
        known: Collection[str] = not_defined.of_words(shared, reference.of)
    elif finding is not None:
        known = [value.id for value in finding.values]
    else:
        return
    if reference.name in known:
        return
    code = not_defined.CODE
    message = _("{of} `{name}` is not defined").format(
        of=in_words(reference.of), name=reference.name
    )
    if reference.value_of is not None:
        code = no_such_value.CODE
        message = _("`{finding}` has no value `{name}`").format(
            finding=reference.value_of, name=reference.name
        )
    advice = did_you_mean(reference.name, known, _("Define it in a vocabulary file."))
    span = file.tree.span(reference.pointer)
    yield code.at(file.shown_as, reference.pointer, span, message, advice)


def _unused(loaded: Loaded, file: File) -> Iterator[Problem]:
    if not all(each.is_whole for each in loaded.files.values()):
        return
    used = _used(loaded.library)
    for table, kinds in never_used.TABLES:
        entry = getattr(file.tree.root, "entries", {}).get(table)
        for name in getattr(entry.value, "entries", {}) if entry else ():
            if not any((kind, name) in used for kind in kinds):
                message = _("`{name}` is defined under `{table}`, and no pathway uses it").format(
                    name=name, table=table
                )
                span = file.tree.span((table, name), at_key=True)
                advice = _("Delete it, or use it in the step it was meant for.")
                at = (table, name)
                yield never_used.CODE.at(file.shown_as, at, span, message, advice)


@lru_cache(maxsize=1)
def _used(library: Library) -> frozenset[tuple[Of, str]]:
    found = list(of_words(library.shared))
    for pathway in library.pathways.values():
        found += references(pathway)
    return frozenset((each.of, each.name) for each in found if each.value_of is None)
