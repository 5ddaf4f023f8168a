"""A file that is edited again and again: what stands at each save is what is found from scratch."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from chamberwise.engine.checks import references, vocabulary, wording_of
from chamberwise.engine.checks.knowledge import at_sight
from chamberwise.engine.exploration import bare
from chamberwise.engine.local.localising import base_digest, localised
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.reading.library import load_library, read_file
from chamberwise.tui.drafting import Draft, draft_of, draft_of_sheet, read_again, stamps
from chamberwise.tui.examining import Examined
from chamberwise.tui.finding import Finder
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.engine.local.stage import BELOW
from tests.support.build import TODAY
from tests.support.thorough import THOROUGH

HERE = Path(__file__).parents[1]
LIBRARY = HERE / "library"
SHEET = HERE / "engine" / "local" / "sheets" / "everything.yaml"
KEPT_BY_VALUE = (
    bare.bare,
    bare._library,
    at_sight.seen_from,
    at_sight.explored_from,
    at_sight._widest,
    references._of_rule,
    references._of_step,
    wording_of._hits,
    vocabulary._used,
    base_digest,
)

edits = st.lists(st.tuples(st.integers(0, 5), st.integers(0, 10**6)), min_size=1, max_size=5)
often = settings(
    max_examples=200 if THOROUGH else 25,
    deadline=None,
    derandomize=not THOROUGH,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)


def edited(text: str, kind: int, at: int, first: str) -> str:
    """Return a text after one edit of a kind, at some place."""
    lines = text.split("\n")
    place = at % len(lines)
    arrows = [number for number, line in enumerate(lines) if "go to: " in line]
    if kind == 0:
        return first
    if kind == 1:
        return "\n".join(lines[:place] + lines[place + 1 :])
    if kind == 2:
        return text.replace("the", "this", 1 + at % 9)
    if kind == 3 and arrows:
        here, there = arrows[at % len(arrows)], arrows[at // 7 % len(arrows)]
        lines[here] = lines[here].split("go to: ")[0] + "go to: " + lines[there].split("go to: ")[1]
        return "\n".join(lines)
    if kind == 4:
        return "\n".join(line for line in lines if not line.strip().startswith("makes "))
    return "\n".join(["# A remark.", *lines])


def everything(finder: Finder, draft: Draft) -> tuple[Examined, Examined, Examined]:
    at_once, whole = finder.at_once(draft), finder.whole(draft)
    return at_once, whole, finder.proof(draft, whole)


def from_scratch(draft: Draft) -> tuple[Examined, Examined, Examined]:
    """Return what is found by somebody who has seen nothing before."""
    for each in KEPT_BY_VALUE:
        each.cache_clear()
    return everything(Finder(TODAY), draft)


def same(found: Examined, other: Examined) -> bool:
    """Whether two findings are equal, but for how many states were looked at for them."""
    if found.proof is None or other.proof is None:
        return found == other
    told = (found.problems, found.why, found.before, found.proof.rules, found.proof.switched_off)
    return told == (
        other.problems,
        other.why,
        other.before,
        other.proof.rules,
        other.proof.switched_off,
    )


def hold(finder: Finder, draft: Draft, anew: Draft) -> None:
    """Compare what a finder finds that has seen earlier saves with what is found from scratch."""
    at_once, whole, proved = everything(finder, draft)
    for found, cold in zip((at_once, whole, proved), from_scratch(anew), strict=True):
        assert same(found, cold)
    assert set(at_once.problems) <= set(whole.problems) or draft.base is not None
    pathway = draft.pathway
    if proved.proof is not None and pathway is not None:
        slow = prove(draft.loaded.library, pathway.id)
        kept = finder.kept.proof(draft.loaded.library, pathway.id)
        assert kept.verdicts == slow.verdicts


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for source in (LIBRARY, BELOW):
        shutil.copytree(source, tmp_path / source.parent.name)
    return tmp_path


@often
@given(edits=edits)
def test_a_pathway(folder: Path, edits: list[tuple[int, int]]) -> None:
    library = folder / LIBRARY.parent.name
    path = library / "shallow-chamber.yaml"
    first = (LIBRARY / path.name).read_text(encoding="utf-8")
    path.write_text(first, encoding="utf-8")
    finder, draft = Finder(TODAY), draft_of(load_library(library), str(path))
    for save, (kind, at) in enumerate(edits, 1):
        text = path.read_text(encoding="utf-8")
        path.write_text(edited(text, kind, at, first), encoding="utf-8")
        draft = read_again(draft, {**stamps(draft.loaded.files), str(path): (save, len(text))})
        hold(finder, draft, draft_of(load_library(library), str(path)))


@often
@given(edits=edits)
def test_a_sheet_and_what_it_lies_over(folder: Path, edits: list[tuple[int, int]]) -> None:
    library = folder / BELOW.parent.name
    sheet, below = folder / SHEET.name, library / "leaking-wound.yaml"
    firsts = {
        sheet: SHEET.read_text(encoding="utf-8"),
        below: (BELOW / below.name).read_text(encoding="utf-8"),
    }
    for path, first in firsts.items():
        path.write_text(first, encoding="utf-8")

    def read() -> Draft:
        base, file = load_library(library), read_file(sheet)
        return draft_of_sheet(localised(base, file), base, file)

    finder, draft = Finder(TODAY), read()
    for save, (kind, at) in enumerate(edits, 1):
        path = below if at % 4 == 0 else sheet
        text = path.read_text(encoding="utf-8")
        path.write_text(edited(text, kind, at // 4, firsts[path]), encoding="utf-8")
        draft = read_again(draft, {**stamps(draft.loaded.files), str(path): (save, len(text))})
        hold(finder, draft, read())
