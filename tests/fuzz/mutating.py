"""Damage to bytes, lines, names and trees, all drawn from one source of randomness."""

from __future__ import annotations

import re
from copy import deepcopy
from random import Random

from chamberwise.engine.reading.tree import Listing, Node, Scalar, Table, parse

from tests.engine.reading.documents import damaged, nodes
from tests.fuzz.rendering import rendered

PIECES = (
    *(": ", "- ", "? ", "{", "}", "[", "]", ",", "#", "&a ", "*a", "!!str ", "! ", "|", ">", "|2-"),
    *(
        "'",
        '"',
        "%",
        "@",
        "`",
        "\\",
        "---\n",
        "...\n",
        "\t",
        "\r",
        "\n",
        "\r\n",
        "  ",
        "\x00",
        "\x85",
    ),
    *(
        "\u2028",
        "\ufeff",
        "\U0001f441",
        "é",
        "٣",
        "~",
        "null",
        "yes",
        "0",
        "99",
        "-1",
        "2026-02-30",
    ),
    *(
        "cannot tell",
        "ask: ",
        "do: ",
        "branch: ",
        "go to: ",
        "at most: 1",
        "means: []",
        "sources: ",
    ),
    *(
        "rules: ",
        "absence: {never: {}}",
        "comes: ",
        "scope: {after each: ",
        "act: ",
        "unless known: ",
    ),
    *("<<<<<<< a\n", "x" * 5000, "[" * 40, "a: " * 40, "- " * 40, "<<: ", "steps: ", "findings: "),
)
_NAME = re.compile(r"[a-z][a-z0-9]*(?:-[a-z0-9]+)*")


def mutated(text: str, random: Random) -> bytes:
    """Return a file's bytes after a few mutations."""
    for _ in range(random.randint(1, 4)):
        text = random.choice((_in_lines, _in_names, _in_names, _in_tree, _piece))(text, random)
    data = text.encode("utf-8", "surrogatepass")
    return _in_bytes(data, random) if random.random() < 0.3 else data


def _in_bytes(data: bytes, random: Random) -> bytes:
    changed = bytearray(data)
    for _ in range(random.randint(1, 8)):
        place = random.randrange(len(changed) + 1)
        way = random.randrange(3)
        if way == 0:
            changed[place:place] = bytes(random.randrange(256) for _ in range(random.randint(1, 4)))
        elif way == 1:
            del changed[place : place + random.randint(1, 20)]
        elif place < len(changed):
            changed[place] ^= 1 << random.randrange(8)
    return bytes(changed)


def _piece(text: str, random: Random) -> str:
    place = random.randrange(len(text) + 1)
    return text[:place] + random.choice(PIECES) + text[place + random.choice((0, 0, 1, 9)) :]


def _in_lines(text: str, random: Random) -> str:
    lines = text.split("\n")
    one, other = random.randrange(len(lines)), random.randrange(len(lines))
    way = random.randrange(5)
    if way == 0:
        lines[one], lines[other] = lines[other], lines[one]
    elif way == 1:
        del lines[one]
    elif way == 2:
        lines.insert(other, lines[one])
    elif way == 3:
        lines[one] = " " * random.randint(0, 8) + lines[one].strip()
    else:
        lines[one:one] = lines[other : other + random.randint(1, 30)]
    return "\n".join(lines)


def _in_names(text: str, random: Random) -> str:
    found = list(_NAME.finditer(text))
    if not found:
        return text
    one, other = random.choice(found), random.choice(found)
    return text[: one.start()] + other.group() + text[one.end() :]


def _in_tree(text: str, random: Random) -> str:
    root = parse(text, "made.yaml").root
    if root is None:
        return text
    root = _grafted(root, random) if random.random() < 0.6 else damaged(root, random, 2)
    return rendered(root)


def _grafted(root: Node, random: Random) -> Node:
    """Return a copy in which one node stands in the place of another of its kind as well."""
    copy = deepcopy(root)
    every = list(nodes(copy))
    one = random.choice(every)
    same = [each for each in every if type(each) is type(one)]
    other = deepcopy(random.choice(same))
    if isinstance(one, Scalar) and isinstance(other, Scalar):
        one.text = other.text
    elif isinstance(one, Listing) and isinstance(other, Listing):
        one.items = one.items + other.items if random.random() < 0.5 else other.items
    elif isinstance(one, Table) and isinstance(other, Table):
        one.entries = one.entries | other.entries if random.random() < 0.5 else other.entries
    return copy
