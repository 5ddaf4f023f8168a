"""The shapes a file is made of; the reader and the editors' schema both derive from them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import TypeAlias

from chamberwise.engine.language.texts import N_


class Kind(StrEnum):
    """What a scalar's text stands for."""

    TEXT = "text"
    NAME = "name"
    WORD = "word"
    COUNT = "count"
    DATE = "date"
    DURATION = "duration"
    EDITION = "edition"
    DIGEST = "digest"
    YES_NO = "yes or no"


@dataclass(frozen=True, slots=True)
class Scalar:
    """One text, typed by `kind`; a `WORD` is one of `words`."""

    kind: Kind
    words: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Key:
    """One key of a record, with what it means in a line for editors."""

    shape: Shape
    doc: str
    required: bool = False


@dataclass(frozen=True, slots=True)
class Record:
    """A mapping with fixed keys; of some exactly one stands there, some stand only together.

    `only_with` names, for a key, the other keys of which one must stand beside it.
    """

    name: str
    keys: Mapping[str, Key]
    exactly_one: tuple[str, ...] = ()
    together: tuple[str, ...] = ()
    only_with: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    fewest: int = 0
    told_by: str = ""
    """The key that a bare text in its place was most likely meant for."""


@dataclass(frozen=True, slots=True)
class Entries:
    """A mapping whose keys the author names; `words` are keys allowed beside names."""

    of: Shape
    words: tuple[str, ...] = ()
    fewest: int = 1


@dataclass(frozen=True, slots=True)
class Items:
    """A list."""

    of: Shape
    fewest: int = 1


@dataclass(frozen=True, slots=True)
class Either:
    """A short form, which is one text, or a long form."""

    short: Scalar
    long: Record | Items | OneOrMore


@dataclass(frozen=True, slots=True)
class OneOrMore:
    """A record, or a list of such."""

    of: Record


@dataclass(frozen=True, slots=True)
class Kinds:
    """A record whose kind is told by the one key it has of `by_key`."""

    by_key: Mapping[str, Record]
    name: str = N_("a step")
    noun: str = N_("step")
    """The name without its article."""


@dataclass(frozen=True, slots=True)
class Anything:
    """What will stand in another file and is read there: kept as it is written."""


Shape: TypeAlias = Scalar | Record | Entries | Items | Either | OneOrMore | Kinds | Anything

TEXT = Scalar(Kind.TEXT)
NAME = Scalar(Kind.NAME)
COUNT = Scalar(Kind.COUNT)
DATE = Scalar(Kind.DATE)
DURATION = Scalar(Kind.DURATION)
EDITION = Scalar(Kind.EDITION)
DIGEST = Scalar(Kind.DIGEST)
YES_NO = Scalar(Kind.YES_NO)


def one_of(*words: str) -> Scalar:
    """Return the shape of a text that is one of a few words."""
    return Scalar(Kind.WORD, words)
