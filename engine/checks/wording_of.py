"""The wording rules over the texts of a pathway or a vocabulary file."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache

from chamberwise.engine.checks.texts import Text
from chamberwise.engine.checks.wording import RULES
from chamberwise.engine.checks.wording.rule import Hit, TextKind, WordingRule
from chamberwise.engine.diagnostics.problem import Problem, Span
from chamberwise.engine.language.speaking import spoken
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading.tree import Tree


def wording(texts: Iterable[Text], tree: Tree) -> Iterator[Problem]:
    """Yield a problem for every hit of every rule that reads the text's kind."""
    for text in texts:
        for rule, hit in _hits(text.kind, text.words, spoken().code):
            yield _problem(rule, hit, text, tree)


@lru_cache(maxsize=4096)
def _hits(kind: TextKind, words: str, language: str) -> tuple[tuple[WordingRule, Hit], ...]:
    """Return the hits in a text, told in a language: it is the one that is spoken."""
    return tuple((rule, hit) for rule in RULES if kind in rule.reads for hit in rule.find(words))


def _problem(rule: WordingRule, hit: Hit, text: Text, tree: Tree) -> Problem:
    span = tree.span(text.pointer)
    if span:
        span = _within(span, text.words, hit)
    return Problem(
        rule.slug,
        rule.severity,
        tree.source(text.pointer).file,
        text.pointer,
        span,
        hit.message,
        _(rule.why),
        hit.advice,
    )


def _within(span: Span, words: str, hit: Hit) -> Span:
    """Narrow a text's place to the hit, where the text stands on one line as it is read."""
    width = span.end_column - span.column
    quoted = width - len(words)
    if span.line != span.end_line or quoted not in (0, 2):
        return span
    start = span.column + quoted // 2 + hit.start
    return span._replace(column=start, end_column=start + max(1, hit.end - hit.start))
