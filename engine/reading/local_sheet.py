"""A local sheet as read: what it sets, and its operations with what they expect to find."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum
from typing import Any

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.keys.digest import short_digest
from chamberwise.engine.model.local import (
    Local,
    LocalPlace,
    Machine,
    Phone,
    Product,
    SwitchedOff,
    TimeTarget,
)
from chamberwise.engine.reading.build_values import Raw
from chamberwise.engine.reading.nodes import node_at
from chamberwise.engine.reading.places import place_of as place_of
from chamberwise.engine.reading.translation_file import TranslatedText, sheet_translations
from chamberwise.engine.reading.tree import Node, Tree


class Verb(StrEnum):
    """What an operation does."""

    SET = "set"
    REWORD = "reword"
    CHANGE = "change"
    ADD = "add"
    REMOVE = "remove"


@dataclass(frozen=True, slots=True)
class Operation:
    """One thing that a sheet does to the files below it.

    `at` is its place in the sheet, `said` the key there that names what is touched.
    """

    verb: Verb
    place: Pointer
    at: Pointer
    said: Pointer
    pathway: str | None = None
    to: Node | None = None
    expects: Node | None = None
    after: str | None = None
    go_to: Node | None = None


@dataclass(frozen=True, slots=True)
class LocalSheet:
    """One sheet: what it sets for the unit, and its operations in the order of the file.

    Translations are no operations: they change nothing that is walked. They are approved with it.
    """

    local: Local
    operations: tuple[Operation, ...]
    translations: Mapping[str, tuple[TranslatedText, ...]] = field(default_factory=dict)
    """By language."""


def local_sheet(raw: Raw, tree: Tree) -> LocalSheet:
    """Return the sheet that a file's values describe; what could not be read is left out."""
    said = sheet_translations(raw)
    local = replace(_local(raw), translated=_digest_of(said))
    return LocalSheet(local, tuple(_operations(raw, tree)), said)


def _digest_of(said: Mapping[str, tuple[TranslatedText, ...]]) -> str:
    texts = [
        [language, list(map(str, each.at)), each.of, each.within, each.says, each.accepted]
        for language, several in said.items()
        for each in several
    ]
    return short_digest(texts) if texts else ""


def _local(raw: Raw) -> Local:
    over = raw.get("over") or {}
    return Local(
        id=raw.get("local sheet", ""),
        unit=raw.get("unit", ""),
        over=over.get("pathway", ""),
        base_edition=over.get("edition", ""),
        base_digest=over.get("digest", ""),
        covers=(),
        change=raw.get("reason for change", ""),
        phones={
            name: Phone(each["number"], each["hours"], each.get("outside hours", ""))
            for name, each in _whole(raw, "phones", "number", "hours")
        },
        places={
            name: LocalPlace(each["title"], each["walk"])
            for name, each in _whole(raw, "places", "title", "walk")
        },
        products={
            name: Product(
                each["product"], each["place"], each.get("shelf", ""), each.get("stock", "")
            )
            for name, each in _whole(raw, "products", "product", "place")
        },
        machine=_machine(raw.get("machine") or {}),
        reasons={name: each["because"] for name, each in _whole(raw, "choices", "because")},
        targets={
            f"{each.get('in', over.get('pathway', ''))}/{name}": TimeTarget(
                each["within"], each["method"]
            )
            for name, each in _whole(raw, "time targets", "within", "method")
        },
        switched_off={
            name: SwitchedOff(each["by"], each["because"], each["on"])
            for name, each in _whole(raw, "switched off", "by", "because", "on")
        },
    )


def _machine(raw: Raw) -> Machine | None:
    return Machine(raw["title"], raw.get("pages", {})) if "title" in raw else None


def _whole(raw: Raw, table: str, *needed: str) -> Iterator[tuple[str, Raw]]:
    """Yield the entries of a table that have everything they need."""
    for name, each in raw.get(table, {}).items():
        if all(key in each for key in needed):
            yield name, each


def _operations(raw: Raw, tree: Tree) -> Iterator[Operation]:
    """Yield the operations by the line on which they stand."""
    found = [*_set(raw, tree), *_rewordings(raw, tree), *_changes(raw, tree)]
    yield from sorted(found, key=lambda each: tree.span(each.said, at_key=True) or ())


def _set(raw: Raw, tree: Tree) -> Iterator[Operation]:
    for name, each in _whole(raw, "choices", "chosen"):
        at: Pointer = ("choices", name)
        to, place = node_at(tree.root, (*at, "chosen")), ("choices", name, "chosen")
        yield Operation(Verb.SET, place, at, (*at, "chosen"), None, to, each.get("expects"))
    for name, each in _whole(raw, "time targets", "within"):
        at = ("time targets", name)
        to, place = node_at(tree.root, (*at, "within")), ("steps", name, "time target")
        yield Operation(
            Verb.SET, place, at, (*at, "within"), each.get("in"), to, each.get("expects")
        )


def _rewordings(raw: Raw, tree: Tree) -> Iterator[Operation]:
    for number, each in enumerate(raw.get("wording", ())):
        if each and "at" in each and "says" in each:
            at: Pointer = ("wording", number)
            to, expects = node_at(tree.root, (*at, "says")), each.get("expects")
            place = place_of(each["at"])
            yield Operation(Verb.REWORD, place, at, (*at, "at"), each.get("in"), to, expects)


def _changes(raw: Raw, tree: Tree) -> Iterator[Operation]:
    for number, read in enumerate(raw.get("changes", ())):
        each = read or {}
        verb = next((verb for verb in (Verb.CHANGE, Verb.ADD, Verb.REMOVE) if verb in each), None)
        if verb is None or (verb is not Verb.REMOVE and _content(each) is None):
            continue
        at: Pointer = ("changes", number)
        yield Operation(
            verb,
            place_of(each[verb]),
            at,
            (*at, str(verb)),
            each.get("in"),
            _content(each),
            each.get("expects"),
            each.get("after"),
            node_at(tree.root, (*at, "go to")),
        )


def _content(raw: Raw) -> Any:
    return raw.get("to", raw.get("as"))
