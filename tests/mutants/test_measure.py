"""The measure adds up, is the same however it is spread, and knows what was reviewed."""

from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.engine.diagnostics.text import problem_text
from chamberwise.engine.mutants import measure as measuring
from chamberwise.engine.mutants.measure import measure
from chamberwise.engine.mutants.strength import Survivor

from tests.mutants.leaking import NAME, leaking, with_list

SURVIVES = "loosen-bound/hydrate/1 more"
KILLED = "drop-step/suture"


def listed(*edits: str) -> str:
    entries = "".join(f"  - edit: {each}\n    reason: It does no harm.\n" for each in edits)
    return f"mutants of: {NAME}\nreviewed:\n{entries}"


def test_it_adds_up() -> None:
    found = measure(leaking(), NAME, workers=1)
    assert found.total == sum(each.made for each in found.killed)
    gone = sum(each.killed + each.same for each in found.killed)
    assert found.total - len(found.survivors) == gone
    assert sum(found.by.values()) == sum(each.killed for each in found.killed)
    assert list(found.by.values()) == sorted(found.by.values(), reverse=True)
    assert found.by["dry-before-the-end"]
    assert SURVIVES in {each.id for each in found.unreviewed}
    assert not found.is_clean


def test_progress_is_told_to_the_end() -> None:
    told: list[tuple[int, int]] = []
    found = measure(leaking(), NAME, workers=1, told=lambda *each: told.append(each))
    assert told == [(done, found.total) for done in range(1, found.total + 1)]


def test_it_is_the_same_however_many_processes_do_it(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(measuring, "FEW", 0)
    assert measure(leaking(), NAME, workers=2) == measure(leaking(), NAME, workers=1)


def test_a_sample_takes_every_so_manieth() -> None:
    whole, sample = measure(leaking(), NAME, workers=1), measure(leaking(), NAME, every=5)
    assert sample.total == -(-whole.total // 5)
    assert set(sample.survivors) <= set(whole.survivors)


def test_a_reviewed_survivor_has_its_reason(tmp_path: Path) -> None:
    whole = measure(leaking(), NAME, workers=1)
    text = listed(*(each.id for each in whole.survivors))
    found = measure(with_list(tmp_path, text), NAME, workers=1)
    assert {each.reason for each in found.survivors} == {"It does no harm."}
    assert found.is_clean
    assert found.killed == whole.killed  # what is reviewed does not count as killed


def test_an_entry_may_stand_for_ids_that_begin_so(tmp_path: Path) -> None:
    found = measure(with_list(tmp_path, listed("loosen-bound/*")), NAME, workers=1)
    reviewed = [each.id for each in found.survivors if each.reason]
    assert reviewed == [SURVIVES, "loosen-bound/hydrate/10 more"]
    assert found.stale == ()


def test_an_entry_that_speaks_of_no_survivor_is_stale(tmp_path: Path) -> None:
    loaded = with_list(tmp_path, listed(SURVIVES, KILLED, "drop-step/no-such-step"))
    assert measure(loaded, NAME, workers=1).stale == (KILLED, "drop-step/no-such-step")
    assert measure(loaded, NAME, every=2).stale == ()  # a sample cannot know


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (f"mutants of: {NAME}\nreviewd: []\n", "`reviewd` is no key of"),
        (f"mutants of: {NAME}\nreviewed:\n  - edit: x\n    why: y\n", ":4:5: "),
        (listed(SURVIVES).replace(NAME, "other"), "the list is of `other`"),
        ("mutants of: [\n", ":2:1: "),
        ("- a\n", ":1:1: "),
        ("", "leaking-wound.yaml"),
        ("\0", "leaking-wound.yaml"),
    ],
)
def test_what_is_wrong_with_the_list_is_told_by_place(tmp_path: Path, text: str, told: str) -> None:
    found = measure(with_list(tmp_path, text), NAME, every=10)
    assert told in "\n".join(problem_text(each, {}) for each in found.problems)
    assert not found.is_clean


def test_a_survivor_is_unreviewed_until_a_reason_is_given() -> None:
    found = measure(leaking(), NAME, workers=1)
    assert found.unreviewed == tuple(
        Survivor(each.id, each.kind, each.description, None) for each in found.survivors
    )
