"""Checks on a file of shared words: names its definitions use, and words no pathway uses."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.evidence.no_source import unsourced
from chamberwise.engine.checks.names import never_used, no_such_value, not_defined
from chamberwise.engine.checks.references import Of, Reference, of_words, references
from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.model.words import Words
from chamberwise.engine.reading.library import File, Loaded


def check_words(loaded: Loaded, file: File) -> Iterator[Problem]:
    """Yield every problem of a vocabulary file's names."""
    yield from undefined(loaded, file)
    yield from _unused(loaded, file)
    if file.is_whole:
        yield from unsourced(file.words or Words(), file.tree)


def undefined(loaded: Loaded, file: File) -> Iterator[Problem]:
    """Yield a problem for every name that a vocabulary file uses and nobody has defined."""
    if not all(each.defines_all for each in loaded.vocabulary):
        return
    for reference in of_words(file.words or Words()):
        yield from _undefined(reference, loaded.library.shared, file)


def _undefined(reference: Reference, shared: Words, file: File) -> Iterator[Problem]:
    if reference.value_of is None:
        code = not_defined.CODE
        known = list(shared.sources if reference.of is Of.SOURCE else shared.findings)
        message = f"{reference.of} `{reference.name}` is not defined"
    else:
        finding = shared.findings.get(reference.value_of)
        if finding is None:
            return
        code = no_such_value.CODE
        known = [value.id for value in finding.values]
        message = f"`{reference.value_of}` has no value `{reference.name}`"
    if reference.name not in known:
        advice = did_you_mean(reference.name, known, "Define it in a vocabulary file.")
        span = file.tree.span(reference.pointer)
        yield code.at(file.shown_as, reference.pointer, span, message, advice)


def _unused(loaded: Loaded, file: File) -> Iterator[Problem]:
    if not all(each.is_whole for each in loaded.files.values()):
        return
    used = _used(loaded)
    for table, kinds in never_used.TABLES:
        entry = getattr(file.tree.root, "entries", {}).get(table)
        for name in getattr(entry.value, "entries", {}) if entry else ():
            if not any((kind, name) in used for kind in kinds):
                message = f"`{name}` is defined under `{table}`, and no pathway uses it"
                span = file.tree.span((table, name), at_key=True)
                advice = "Delete it, or use it in the step it was meant for."
                at = (table, name)
                yield never_used.CODE.at(file.shown_as, at, span, message, advice)


def _used(loaded: Loaded) -> set[tuple[Of, str]]:
    found = list(of_words(loaded.library.shared))
    for pathway in loaded.library.pathways.values():
        found += references(pathway)
    return {(each.of, each.name) for each in found if each.value_of is None}
