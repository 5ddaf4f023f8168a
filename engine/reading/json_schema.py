"""The JSON Schema (draft 2020-12) of the files for editors, from the very shapes that read them.

An editor types scalars before a schema sees them, so a text may come as a number or a boolean.
What it cannot tell is how a number was spelled: `03` and `3` are one number to it.
"""

from __future__ import annotations

import json
from typing import Any, TypeAlias

from chamberwise.engine.brief.form import LIST, STOCK
from chamberwise.engine.reading.form_drill import DRILL, PHRASES, TRUTH
from chamberwise.engine.reading.form_local import LOCAL_SHEET
from chamberwise.engine.reading.form_pathway import PATHWAY
from chamberwise.engine.reading.form_reviewed import REVIEWED
from chamberwise.engine.reading.form_translation import TRANSLATION
from chamberwise.engine.reading.form_vocabulary import VOCABULARY
from chamberwise.engine.reading.scalars import EXPECTED, NOTHING, PATTERNS
from chamberwise.engine.reading.shapes import (
    NAME,
    Anything,
    Either,
    Entries,
    Items,
    Key,
    Kind,
    Kinds,
    OneOrMore,
    Record,
    Scalar,
    Shape,
)

Schema: TypeAlias = dict[str, Any]

DIALECT = "https://json-schema.org/draft/2020-12/schema"
_END = r"(?![\s\S])"
_NOT_BLANK = rf"^(?!(?:{'|'.join(filter(None, NOTHING))}){_END})\s*\S"
_NUMBERS: dict[Kind, Schema] = {
    Kind.COUNT: {"type": ["integer", "string"], "minimum": 1, "maximum": 99},
    Kind.EDITION: {"type": ["number", "string"], "minimum": 0, "exclusiveMaximum": 10000},
}


def schema_files() -> dict[str, str]:
    """Return the text of every schema file by its name."""
    return {
        "pathway.schema.json": _text(schema(PATHWAY, "pathway")),
        "vocabulary.schema.json": _text(schema(VOCABULARY, "vocabulary")),
        "local-sheet.schema.json": _text(schema(LOCAL_SHEET, "local-sheet")),
        "translation.schema.json": _text(schema(TRANSLATION, "translation")),
        "mutants.schema.json": _text(schema(REVIEWED, "mutants")),
        "drill.schema.json": _text(schema(DRILL, "drill")),
        "truth.schema.json": _text(schema(TRUTH, "truth")),
        "phrases.schema.json": _text(schema(PHRASES, "phrases")),
        "stock.schema.json": _text(schema(STOCK, "stock")),
        "list.schema.json": _text(schema(LIST, "list")),
    }


def schema(shape: Record, name: str) -> Schema:
    """Return the whole schema of one form of file."""
    definitions = _Definitions()
    body = definitions.record(shape)
    head = {
        "$schema": DIALECT,
        "$id": f"urn:chamberwise:{name}-schema",
        "title": _sentence(shape.name),
    }
    return {**head, **body, "$defs": dict(sorted(definitions.found.items()))}


def _text(value: Schema) -> str:
    return json.dumps(value, indent=2, ensure_ascii=False) + "\n"


class _Definitions:
    """The records and scalars met on the way, each written once and referred to by name."""

    def __init__(self) -> None:
        self.found: dict[str, Schema] = {}
        self._shape_of: dict[str, Shape] = {}

    def of(self, shape: Shape) -> Schema:
        match shape:
            case Scalar(kind=Kind.WORD):
                return {"enum": [str(word) for word in shape.words]}
            case Scalar():
                return self._defined(str(shape.kind).replace(" ", "-"), shape)
            case Record():
                return self._defined(_definition_name(shape.name), shape)
            case Kinds():
                return self._defined(_definition_name(shape.name), shape)
            case Anything():
                return {}
            case Entries():
                return self._entries(shape)
            case Items():
                return {"type": "array", "items": self.of(shape.of), "minItems": shape.fewest}
            case Either():
                return {"anyOf": [self.of(shape.short), self.of(shape.long)]}
            case OneOrMore():
                return {"anyOf": [self.of(shape.of), self.of(Items(shape.of))]}

    def record(self, shape: Record) -> Schema:
        made: Schema = {
            "type": "object",
            "properties": {name: self._key(key) for name, key in shape.keys.items()},
            "required": [name for name, key in shape.keys.items() if key.required],
            "additionalProperties": False,
        }
        if shape.fewest:
            made["minProperties"] = shape.fewest
        if shape.exactly_one:
            made["oneOf"] = [{"required": [str(name)]} for name in shape.exactly_one]
        needed = {
            name: [other for other in shape.together if other != name] for name in shape.together
        }
        needed |= {name: list(one) for name, one in shape.only_with.items() if len(one) == 1}
        if needed:
            made["dependentRequired"] = needed
        beside = {
            name: {"anyOf": [{"required": [str(other)]} for other in others]}
            for name, others in shape.only_with.items()
            if len(others) > 1
        }
        return made | ({"dependentSchemas": beside} if beside else {})

    def _key(self, key: Key) -> Schema:
        return {"description": f"{key.doc}.", **self.of(key.shape)}

    def _entries(self, shape: Entries) -> Schema:
        names = self.of(NAME)
        if shape.words:
            names = {"anyOf": [{"enum": list(shape.words)}, names]}
        made: Schema = {
            "type": "object",
            "propertyNames": names,
            "additionalProperties": self.of(shape.of),
            "minProperties": shape.fewest,
        }
        if shape.words:
            made["properties"] = {word: self.of(shape.of) for word in shape.words}
        return made

    def _kinds(self, shape: Kinds) -> Schema:
        telling = {
            name: {"description": f"{record.keys[name].doc}: {record.name}."}
            for name, record in shape.by_key.items()
        }
        return {
            "type": "object",
            "properties": telling,
            "oneOf": [{"required": [name]} for name in shape.by_key],
            "allOf": [
                {"if": {"required": [name]}, "then": self.of(record)}
                for name, record in shape.by_key.items()
            ],
        }

    def _defined(self, name: str, shape: Shape) -> Schema:
        if self._shape_of.setdefault(name, shape) is not shape:
            raise ValueError(f"two shapes are called {name}")
        if name not in self.found:
            self.found[name] = {}
            self.found[name] = self._definition(shape)
        return {"$ref": f"#/$defs/{name}"}

    def _definition(self, shape: Shape) -> Schema:
        if isinstance(shape, Record):
            return {"title": _sentence(shape.name), **self.record(shape)}
        if isinstance(shape, Kinds):
            return {"title": _sentence(shape.name), **self._kinds(shape)}
        assert isinstance(shape, Scalar)
        return {"title": _sentence(EXPECTED[shape.kind]), **_scalar(shape.kind)}


def _scalar(kind: Kind) -> Schema:
    if kind is Kind.TEXT:
        return {"type": ["string", "number", "boolean"], "pattern": _NOT_BLANK}
    if kind is Kind.YES_NO:
        return {"enum": ["yes", "no"]}
    made: Schema = {"type": "string", "pattern": PATTERNS[kind].removesuffix("$") + _END}
    if kind is Kind.DATE:
        made["format"] = "date"
    return made | _NUMBERS.get(kind, {})


def _sentence(name: str) -> str:
    return name[0].upper() + name[1:].replace("`", "")


def _definition_name(name: str) -> str:
    return name.partition(" ")[2].replace(" ", "-")
