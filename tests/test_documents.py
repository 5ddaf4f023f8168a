"""What the documents show is run: pathways, commands and names that stand in them hold."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

import pytest
from chamberwise.engine.checks.run import check_files
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.reading.form_pathway import PATHWAY, STEP
from chamberwise.engine.reading.library import assemble, read_file, read_text
from chamberwise.tui.command.main import COMMANDS

TOP = Path(__file__).parents[1]
GUIDE = (TOP / "protocols" / "README.md").read_text(encoding="utf-8")
README = (TOP / "README.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"```yaml\n(.*?)```", GUIDE, re.DOTALL)
WHOLE = next(block for block in BLOCKS if "\nsteps:" in block)
REVIEWED = date(2026, 11, 25)


def problems(text: str) -> list[Problem]:
    vocabulary = [read_file(path) for path in sorted(TOP.glob("protocols/vocabulary/*.yaml"))]
    loaded = assemble([*vocabulary, read_text(text, "leaking-wound.yaml")])
    return check_files(loaded, ["leaking-wound.yaml"], REVIEWED)


def test_the_smallest_pathway_checks_as_it_stands() -> None:
    assert problems(WHOLE) == []


@pytest.mark.parametrize("table", ["acts", "choices", "rules"])
def test_the_words_shown_can_be_pasted_in(table: str) -> None:
    block = next(each for each in BLOCKS if each.startswith(f"{table}:"))
    sources = "  source-a: {cite: A, mark: local}\n  source-b: {cite: B, mark: local}\n"
    if "sources:\n" not in f"\n{block}".replace("    sources", ""):
        block += f"\nsources:\n{sources}"
    found = problems(WHOLE.replace("\nsteps:", f"\n{block}\nsteps:", 1))
    assert {problem.code for problem in found} <= {"never-used"}


def test_every_key_of_the_format_stands_in_the_guide() -> None:
    keys = {*PATHWAY.keys} | {key for record in STEP.by_key.values() for key in record.keys}
    assert sorted(key for key in keys if f"`{key}" not in GUIDE and f"{key}:" not in GUIDE) == []


def test_every_command_stands_in_the_readme() -> None:
    assert [name for name in COMMANDS if f"`chamberwise {name}" not in README] == []


def test_every_pathway_stands_in_the_readme() -> None:
    names = [path.stem for path in TOP.glob("protocols/*.yaml")]
    assert [name for name in names if f"`{name}`" not in README] == []


@pytest.mark.parametrize(
    "document", ["README.md", "DEVELOPERS.md", "protocols/README.md", "protocols/RULES.md"]
)
def test_every_file_a_document_names_is_there(document: str) -> None:
    text = (TOP / document).read_text(encoding="utf-8")
    links = re.findall(r"\[[^\]]+\]\(([^)#:]+)\)", re.sub(r"`[^`]*`", "", text))
    folder = (TOP / document).parent
    assert [link for link in links if not (folder / link).exists()] == []
