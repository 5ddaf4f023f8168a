"""Faults of form: keys, kinds of value, dates, names, and YAML itself."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.diagnostics.nearest import nearest
from chamberwise.engine.reading.form_pathway import STEP
from chamberwise.engine.reading.shapes import Either, Entries, Items, Kind, Record, Shape
from chamberwise.engine.reading.shapes import Scalar as ScalarShape
from chamberwise.engine.reading.tree import Scalar, Table

from tests.engine.checks.planting.editing import Fault, Place, Source, read_by

WRONG = {
    Kind.TEXT: ("", " ", "~"),
    Kind.NAME: ("Not A Name", "two--hyphens", "true", "größe"),
    Kind.WORD: ("sometimes", "Draft"),
    Kind.COUNT: ("many", "0", "03", "1.0"),
    Kind.DATE: ("2026-13-01", "2026-02-30", "25.11.2026", "tomorrow"),
    Kind.DURATION: ("thirty", "30", "30s", "0 s"),
    Kind.EDITION: ("next", "1.2.3", "-1"),
    Kind.DIGEST: ("7QK2", "7qk2-m4xp-3a5n"),
    Kind.YES_NO: ("maybe", "true", "on"),
}


def faults(source: Source) -> Iterator[Fault]:
    """Yield every fault of form at every place."""
    for place in source.places:
        shape = read_by(place.shape, place.node)
        if isinstance(shape, Record) and isinstance(place.node, Table):
            yield from _of_record(source, place, place.node, shape)
        elif isinstance(place.shape, Entries) and isinstance(place.node, Table):
            yield from _of_names(source, place, place.node)
        if place.pointer:
            yield from _of_value(source, place)
    yield from _tabs(source)


def _of_record(source: Source, place: Place, node: Table, shape: Record) -> Iterator[Fault]:
    for name, entry in node.entries.items():
        line, at = entry.key.span.line, (*place.pointer, name)
        yield Fault("unknown key", source.with_entry("colour: red", *at), "unknown-key", line)
        twice = source.with_entry(f"{name}: x", *at)
        lower = line if source.is_flow(node) else line + 1
        yield Fault("key twice", twice, "duplicate-key", lower, f"`{name}`")
        yield _misspelt(source, entry.key, shape)
        if _is_needed(name, shape):
            yield _missing(source, place, node, name)


def _misspelt(source: Source, key: Scalar, shape: Record) -> Fault:
    wrong = key.text[:-2] + key.text[:-3:-1]
    wrong = f"{key.text}y" if wrong == key.text else wrong
    text, line = source.replaced((key, wrong)), key.span.line
    known = nearest(wrong, shape.keys)
    saying = f"`{known}`" if known == key.text else ""
    return Fault("misspelt key", text, "unknown-key", line, saying)


def _is_needed(name: str, shape: Record) -> bool:
    return shape.keys[name].required or name in shape.exactly_one or name in shape.together


def _missing(source: Source, place: Place, node: Table, name: str) -> Fault:
    above = place.entry.key if place.entry else next(iter(node.entries.values())).key
    text = source.without(*place.pointer, name)
    slug = "missing-key"
    if name in STEP.by_key and place.shape is STEP.by_key[name]:
        slug = "step-kind"
    if len(node.entries) == 1:
        slug = "missing-key" if source.is_flow(node) else "wrong-kind"
    saying = "nothing stands here" if slug == "wrong-kind" else f"`{name}`"
    return Fault("missing key", text, slug, above.span.line, saying)


def _of_names(source: Source, place: Place, node: Table) -> Iterator[Fault]:
    for entry in node.entries.values():
        if entry.key.text == "cannot tell":
            continue
        text = source.replaced((entry.key, "Not A Name"))
        saying = "`not-a-name`"
        yield Fault("bad name", text, "wrong-value", entry.key.span.line, saying)
        twice = source.with_entry(f"{entry.key.text}: x", *place.pointer, entry.key.text)
        lower = entry.key.span.line + (not source.is_flow(node))
        yield Fault("name twice", twice, "duplicate-key", lower)


def _of_value(source: Source, place: Place) -> Iterator[Fault]:
    node, line = place.node, place.node.span.line
    for wrong in _wrong_kinds(place.shape):
        yield Fault("wrong kind", source.replaced((node, wrong)), "wrong-kind", line)
    if isinstance(node, Scalar):
        shape = place.shape.short if isinstance(place.shape, Either) else place.shape
        if isinstance(shape, ScalarShape):
            for wrong in WRONG[shape.kind]:
                text = source.replaced((node, f'"{wrong}"'))
                yield Fault(f"bad {shape.kind}", text, "wrong-value", line)
        yield from _indirections(source, node)


def _wrong_kinds(shape: Shape) -> tuple[str, ...]:
    match shape:
        case ScalarShape():
            return ("[a, b]", "{a: b}")
        case Items():
            return ("x", "{a: b}", '""')
        case Either(long=Items()):
            return ("{a: b}",)
        case Either():
            return ("[a, b]",)
    return ("x", "[a, b]", '""')


def _indirections(source: Source, node: Scalar) -> Iterator[Fault]:
    line, raw = node.span.line, source.raw(node)
    yield Fault("alias", source.replaced((node, "*a")), "alias-refused", line, "`*a`")
    yield Fault("anchor", source.replaced((node, f"&a {raw}")), "alias-refused", line, "`&a`")
    yield Fault("tag", source.replaced((node, f"!!str {raw}")), "alias-refused", line)
    yield Fault("bare tag", source.replaced((node, f"! {raw}")), "alias-refused", line)
    hidden = source.replaced((node, '"x\\x1b[2J"'))
    yield Fault("escape sequence", hidden, "hidden-character", line)


def _tabs(source: Source) -> Iterator[Fault]:
    for place in source.places:
        key = place.entry.key if place.entry else None
        if key is None or key.span.column == 1:
            continue
        start = source.start(key)
        before = source.text[start - key.span.column + 1 : start]
        goes_on = source.text[: start - len(before)].rstrip().endswith(",")  # within braces
        if not before.strip() and not goes_on:
            text = source.spliced((start - len(before), start, "\t"))
            yield Fault("tab", text, "yaml-syntax", key.span.line, "spaces")
