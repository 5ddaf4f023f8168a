"""The schema files for editors: fresh, found by every shipped file, and telling."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest
from chamberwise.engine.reading.form_pathway import PATHWAY, STEP
from chamberwise.engine.reading.json_schema import DIALECT, schema, schema_files
from chamberwise.engine.reading.shapes import NAME, TEXT, Items, Key, Record, one_of
from chamberwise.engine.store.editor_schemas import write_editor_schemas
from jsonschema import Draft202012Validator

PROTOCOLS = Path(__file__).parents[3] / "protocols"
SHIPPED = sorted(PROTOCOLS.glob("**/*.yaml"))
MODELINE = re.compile(r"# yaml-language-server: \$schema=(\S+)")
PATHWAY_SCHEMA = schema(PATHWAY, "pathway")


@pytest.mark.parametrize("name", schema_files())
def test_the_shipped_schema_is_fresh(name: str) -> None:
    said = "stale: run `python -m chamberwise.engine.store.editor_schemas protocols/schema`"
    assert (PROTOCOLS / "schema" / name).read_text("utf-8") == schema_files()[name], said


def test_nothing_else_lies_among_the_schemas() -> None:
    assert {path.name for path in (PROTOCOLS / "schema").iterdir()} == set(schema_files())


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.name)
def test_every_shipped_file_names_its_schema_on_the_first_line(path: Path) -> None:
    kind = path.parent.name if path.parent != PROTOCOLS else "pathway"
    if kind == "drills":
        kind = path.stem if path.stem in ("truth", "phrases") else "drill"
    if path.parent.parent == PROTOCOLS / "translations":
        kind = "translation"
    if kind == "demonstration":
        kind = path.stem if path.stem in ("stock", "list") else "local-sheet"
    found = MODELINE.fullmatch(path.read_text("utf-8").splitlines()[0])
    assert found
    assert (path.parent / found[1]).resolve() == PROTOCOLS / "schema" / f"{kind}.schema.json"


def test_the_writer_writes_every_file(tmp_path: Path) -> None:
    written = write_editor_schemas(tmp_path / "schema")
    assert {path.name: path.read_text("utf-8") for path in written} == schema_files()


@pytest.mark.parametrize("text", schema_files().values(), ids=schema_files())
def test_a_schema_is_sound_and_names_no_address(text: str) -> None:
    made = json.loads(text)
    Draft202012Validator.check_schema(made)
    assert made["$schema"] == DIALECT
    assert made["$id"].startswith("urn:chamberwise:")
    assert "http" not in text.replace(DIALECT, "")


def test_every_key_is_described() -> None:
    for record in _records(PATHWAY_SCHEMA):
        for name, key in record.get("properties", {}).items():
            assert key.get("description") or name == "cannot tell", name


def test_a_step_is_told_by_its_key() -> None:
    step = PATHWAY_SCHEMA["$defs"]["step"]
    assert [rule["if"]["required"] for rule in step["allOf"]] == [[name] for name in STEP.by_key]


def test_two_shapes_of_one_name_are_refused() -> None:
    one, other = Record("a twin", {}), Record("a twin", {"title": Key(TEXT, "What")})
    both = Record("a pair", {"one": Key(one, "One"), "other": Key(Items(other), "Other")})
    with pytest.raises(ValueError, match="twin"):
        schema(both, "pair")


def test_a_word_is_one_of_few() -> None:
    made = schema(Record("a thing", {"size": Key(one_of("small", "large"), "Size")}), "thing")
    assert made["properties"]["size"] == {"description": "Size.", "enum": ["small", "large"]}


def test_a_key_keeps_its_own_description_beside_the_scalars() -> None:
    made = schema(Record("a thing", {"name": Key(NAME, "What it is called")}), "thing")
    assert made["properties"]["name"]["description"] == "What it is called."


def _records(made: dict[str, Any]) -> list[dict[str, Any]]:
    return [made, *made["$defs"].values()]
