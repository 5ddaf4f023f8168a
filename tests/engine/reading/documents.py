"""Trees made from the shapes, and faults of form put into any tree."""

from __future__ import annotations

from collections.abc import Iterator
from copy import deepcopy
from random import Random

from chamberwise.engine.diagnostics.problem import Span
from chamberwise.engine.reading.shapes import (
    TEXT,
    Anything,
    Either,
    Entries,
    Items,
    Kind,
    Kinds,
    OneOrMore,
    Record,
    Shape,
)
from chamberwise.engine.reading.shapes import Scalar as ScalarShape
from chamberwise.engine.reading.tree import Entry, Listing, Node, Scalar, Table, Tree

HERE = Span(1, 1, 1, 2)
NAMES = ("surgeon", "fill-chamber", "a", "b2", "none", "step-3", "yes", "on", "x-1-y", "nullish")
GOOD = {
    Kind.TEXT: (
        *("Fill it.", "1:10", "yes", "true", "False", "12", "0.10", "1e3", "0x1F", ".5", "-3"),
        *(".inf", ".nan", "~x", "null point", "é \U0001f441", "2026-11-25", "two\nlines", " in "),
    ),
    Kind.NAME: NAMES,
    Kind.COUNT: ("1", "2", "9", "10", "99"),
    Kind.DATE: ("2026-11-25", "2028-02-29", "1999-12-31"),
    Kind.DURATION: ("30 s", "5 min", "2 h", "9999 s"),
    Kind.EDITION: ("0", "0.1", "0.10", "0.123", "3", "12.5", "9999.999"),
    Kind.DIGEST: ("ZE6X-PR7Y-B0Q0", "0000-0000-0000"),
    Kind.YES_NO: ("yes", "no"),
}
ODD = (
    *("", " ", "\u00a0", "\n", "~", "null", "Null", "NULL", "true", "TRUE", "false", "yes", "no"),
    *("0", "3", "100", "03", "+3", "3.0", "1e1", "0x3", "0o3", "-1", "1_000", "12345", ".5", "5."),
    *("0.3", "0.1234", "00.3", "9999.9999", ".inf", ".nan", "2026-02-30", "2026-13-01", "30 s"),
    *("2026-11-25", "2026-11-25\n", "2026-11-5", "30s", "0 s", "draft", "draft\n", "Draft", "eye"),
    *("Name", "two--hyphens", "ende-", "-a", "größe", "surgeon\n", "a b", "cannot tell", "٣"),
)
KEYS = (
    *("ask", "do", "branch", "hand over to", "outcome", "does", "says", "at most", "after that"),
    *("danger", "notice", "instead", "go to", "means", "title", "pathway", "vocabulary", "wy"),
    *("steps", "cannot tell", "sources", "label", "when", "phase", "<<", "~", "true", "Not A Name"),
    *(
        "rules",
        "absence",
        "precedence",
        "chain response",
        "never",
        "comes",
        "scope",
        "until",
        "and",
    ),
    *("before", "after each", "between", "act", "surely", "known", "severity"),
)


def document(shape: Shape, random: Random) -> Node:
    """Return a tree of the right form."""
    match shape:
        case ScalarShape():
            return scalar(random.choice(shape.words or GOOD[shape.kind]), random)
        case Record():
            return _record(shape, random)
        case Kinds():
            return _record(random.choice(list(shape.by_key.values())), random)
        case Items():
            return Listing([document(shape.of, random) for _ in _some(shape.fewest, random)], HERE)
        case Entries():
            names = random.sample((*NAMES, *shape.words), len(_some(shape.fewest, random)))
            return table({name: document(shape.of, random) for name in names})
        case Either():
            return document(random.choice((shape.short, shape.long)), random)
        case Anything():
            return document(random.choice((TEXT, Items(TEXT), Entries(TEXT))), random)
        case OneOrMore():
            return document(random.choice((shape.of, Items(shape.of))), random)


def scalar(text: str, random: Random) -> Scalar:
    """Return a text, quoted or not."""
    return Scalar(text, HERE, quoted=random.random() < 0.3)


def table(values: dict[str, Node]) -> Table:
    """Return a mapping."""
    return Table({name: Entry(Scalar(name, HERE), node) for name, node in values.items()}, HERE)


def _record(shape: Record, random: Random) -> Table:
    kept = {name for name, key in shape.keys.items() if key.required or random.random() < 0.35}
    kept -= {*shape.exactly_one, *shape.together}
    if shape.exactly_one:
        kept.add(random.choice(shape.exactly_one))
    is_asked_for = not kept.isdisjoint(shape.together)
    if is_asked_for or (random.random() < 0.4 and not {*shape.together} & {*shape.exactly_one}):
        kept |= set(shape.together)
    kept -= {name for name, others in shape.only_with.items() if kept.isdisjoint(others)}
    if len(kept) < shape.fewest:
        kept.add(random.choice(list(shape.keys)))
    keys = [name for name in shape.keys if name in kept]
    return table({str(name): document(shape.keys[name].shape, random) for name in keys})


def _some(fewest: int, random: Random) -> range:
    return range(random.randint(fewest, fewest + 2))


def nodes(root: Node) -> Iterator[Node]:
    """Yield a node and everything under it."""
    waiting = [root]
    for node in waiting:
        yield node
        if isinstance(node, Listing):
            waiting += node.items
        elif isinstance(node, Table):
            waiting += [entry.value for entry in node.entries.values()]


def damaged(root: Node, random: Random, faults: int) -> Node:
    """Return a copy with some faults of form, none of which needs to be one where it lands."""
    copy = Listing([deepcopy(root)], HERE)
    for _ in range(faults):
        _damage(random.choice(list(nodes(copy))), random)
    return copy.items[0] if copy.items else Scalar("", HERE)


def _damage(node: Node, random: Random) -> None:
    if isinstance(node, Scalar):
        node.text, node.quoted = random.choice(ODD), random.random() < 0.3
    elif isinstance(node, Listing):
        _damage_listing(node, random)
    else:
        _damage_table(node, random)


def _damage_listing(node: Listing, random: Random) -> None:
    if not node.items or random.random() < 0.3:
        node.items.append(_anything(random))
    elif random.random() < 0.3:
        node.items.clear()
    else:
        node.items[random.randrange(len(node.items))] = _anything(random)


def _damage_table(node: Table, random: Random) -> None:
    names = list(node.entries)
    way = random.randrange(5)
    if way == 0 or not names:
        _put(node, random.choice(KEYS), _anything(random))
        return
    name = random.choice(names)
    if way == 1:
        del node.entries[name]
    elif way == 2:
        node.entries.clear()
    elif way == 3:
        _put(node, random.choice((name[:-1], name + "s", name.upper())), node.entries[name].value)
        del node.entries[name]
    else:
        node.entries[name].value = _anything(random)


def _put(node: Table, name: str, value: Node) -> None:
    node.entries[name] = Entry(Scalar(name, HERE), value)


def _anything(random: Random) -> Node:
    way = random.randrange(4)
    if way == 0:
        return Listing([scalar(random.choice(NAMES), random) for _ in _some(0, random)], HERE)
    if way == 1:
        names = random.sample(KEYS, len(_some(0, random)))
        return table({name: scalar(random.choice(NAMES), random) for name in names})
    return scalar(random.choice((*ODD, *NAMES)), random)


def tree_of(root: Node) -> Tree:
    """Return a tree as the reader takes it."""
    return Tree("made.yaml", root)
