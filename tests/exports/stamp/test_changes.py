"""What changed between two contents: every planted change is told, the gravest first."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from chamberwise.engine.reading.library import load_library
from chamberwise.engine.stamp.copies import Snapshot
from chamberwise.exports.stamp.changes import MOST, Weight, changes, in_lines
from chamberwise.exports.stamp.snapshot import snapshot

FROM = Path(__file__).parents[1] / "proof" / "library"
NAME = "leaking-wound"
BEFORE = snapshot(load_library(FROM).library, NAME)


def after(tmp_path: Path, *edits: tuple[str, str], file: str = f"{NAME}.yaml") -> Snapshot:
    folder = shutil.copytree(FROM, tmp_path / "library")
    path = folder / file
    text = path.read_text()
    for old, new in edits:
        assert old in text
        text = text.replace(old, new, 1)
    path.write_text(text)
    return snapshot(load_library(folder).library, NAME)


def test_nothing_changed() -> None:
    assert changes(BEFORE, BEFORE) == ()
    assert "are the same" in in_lines(())[0]


@pytest.mark.parametrize(
    ("old", "new", "weight", "told"),
    [
        (
            "question: Does the main wound leak?",
            "question: Does it leak?",
            Weight.WORDING,
            "“Does the main wound leak?” is now worded “Does it leak?”.",
        ),
        (
            "why: A leak lowers the pressure and lets infection in.",
            "why: A leak lowers the pressure.",
            Weight.WORDING,
            "“Does the main wound leak?”: its reason, sources, kit or effects changed.",
        ),
        (
            "at most: 2",
            "at most: 3",
            Weight.WAY,
            "after 2 times it is gone",
        ),
    ],
)
def test_one_change_is_told(old: str, new: str, weight: Weight, told: str, tmp_path: Path) -> None:
    found = changes(BEFORE, after(tmp_path, (old, new)))
    assert {change.weight for change in found} == {weight}
    assert any(told in change.text for change in found)


def test_steps_and_lines_and_cautions(tmp_path: Path) -> None:
    steps = dict(BEFORE.steps)
    place, step = next((place, step) for place, step in steps.items() if step.lines)
    shorter = {name: each for name, each in steps.items() if name != place}
    gone = changes(BEFORE, Snapshot(BEFORE.edition, BEFORE.approval, shorter))
    assert gone[-1].text.startswith("Step removed: ") or gone[0].weight is Weight.CAUTION
    added = changes(Snapshot(BEFORE.edition, BEFORE.approval, shorter), BEFORE)
    assert any(change.text.startswith("Step added: ") for change in added)
    assert step.says[:20] in " ".join(change.text for change in added)


def test_a_handover_is_followed(tmp_path: Path) -> None:
    other = "restless-patient"
    assert any(place.startswith(f"{other}/") for place in BEFORE.steps)


def kept(cautions: tuple[str, ...] = (), lines: tuple[str, ...] = ()) -> Snapshot:
    from chamberwise.engine.stamp.copies import KeptStep

    return Snapshot("1", "draft", {"p/a": KeptStep("Hold still", (), lines, cautions, str(lines))})


def test_cautions_and_lines_each_way() -> None:
    one, two = ("DANGER: It tears.",), ("DANGER: It falls.",)
    assert [change.text for change in changes(kept(one), kept())] == [
        "Caution removed: “DANGER: It tears”. At “Hold still”."
    ]
    assert [change.text for change in changes(kept(), kept(one))] == [
        "Caution added: “DANGER: It tears”. At “Hold still”."
    ]
    assert [change.text for change in changes(kept(one), kept(two))] == [
        "Caution changed: “DANGER: It falls”, before “DANGER: It tears”. At “Hold still”."
    ]
    moved = changes(kept(lines=("A: x.", "B: y.")), kept(lines=("B: y.",)))
    assert [change.text for change in moved] == ["Line removed: “A: x”. At “Hold still”."]


def test_the_gravest_come_first_and_the_rest_is_counted() -> None:
    found = changes(kept(("C1.",), tuple(f"L{number}." for number in range(9))), kept((), ()))
    told = in_lines(found)
    assert len(told) == MOST
    assert told[0].startswith("Caution removed")
    assert told[-1] == "And 6 more changes: lines 6."
    assert in_lines(found[:MOST]) == tuple(change.text for change in found[:MOST])


def test_approval_is_told() -> None:
    approved = Snapshot("1", "approved by Clinical lead", kept().steps)
    assert [change.text for change in changes(kept(), approved)] == [
        "Approval: approved by Clinical lead; before: draft."
    ]


def test_long_texts_are_cut_between_words() -> None:
    long = "DANGER: " + "word " * 40
    (change,) = changes(kept((long,)), kept())
    assert "word …”" in change.text
    assert len(change.text) < 120


def test_a_step_that_is_only_named_otherwise_is_neither_gone_nor_new(tmp_path: Path) -> None:
    folder = shutil.copytree(FROM, tmp_path / "library")
    path = folder / f"{NAME}.yaml"
    step = next(iter(BEFORE.steps)).split("/")[1]
    path.write_text(path.read_text().replace(step, "named-otherwise"))
    now = snapshot(load_library(folder).library, NAME)
    assert f"{NAME}/named-otherwise" in now.steps
    (change,) = changes(BEFORE, now)
    assert change.weight is Weight.WORDING
    assert change.text.startswith("Named otherwise in the file: “")
    assert "were not compared" in change.text


def test_what_else_changed_at_a_step_named_otherwise_is_told(tmp_path: Path) -> None:
    folder = shutil.copytree(FROM, tmp_path / "library")
    path = folder / f"{NAME}.yaml"
    step = next(iter(BEFORE.steps)).split("/")[1]
    text = path.read_text().replace(step, "named-otherwise").replace("at most: 2", "at most: 3")
    path.write_text(text)
    found = changes(BEFORE, snapshot(load_library(folder).library, NAME))
    assert Weight.WAY in {each.weight for each in found}
    assert not any("removed" in each.text for each in found if each.weight is Weight.STEP)
