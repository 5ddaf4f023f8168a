"""Faults of wording: each rule's own example of what is wrong, put into every text it reads."""

from __future__ import annotations

import json
from collections.abc import Iterator

from chamberwise.engine.checks.texts import Text, of_words, texts
from chamberwise.engine.checks.wording import RULES
from chamberwise.engine.reading.tree import Scalar

from tests.engine.checks.planting.editing import Fault, Source


def faults(source: Source) -> Iterator[Fault]:
    """Yield every rule's wrong example in every text of a kind that the rule reads."""
    accepted = {
        (each.check, tuple(each.at.split(" / ")))
        for each in (source.pathway.accepted if source.pathway else ())
    }
    for text in _texts(source):
        node = source.at(*text.pointer)
        if not isinstance(node, Scalar):
            continue
        for rule in RULES:
            if text.kind in rule.reads and (rule.slug, text.pointer) not in accepted:
                wrong = json.dumps(rule.wrong, ensure_ascii=False)
                planted = source.replaced((node, wrong))
                yield Fault(f"wording: {rule.slug}", planted, rule.slug, node.span.line)


def _texts(source: Source) -> Iterator[Text]:
    file = source.loaded.files[source.file]
    if file.pathway:
        yield from texts(file.pathway)
    elif file.words:
        for text in of_words(file.words):
            if text.words and source.has(*(str(part) for part in text.pointer)):
                yield text
