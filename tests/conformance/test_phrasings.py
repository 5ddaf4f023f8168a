"""Typed words against phrasings written without sight of the synonyms (common practice).

Mapped is what is taken for the act, or offered where it is not sure. The share asked for is nine of
ten; no act is ever taken for one that its words deny, and no wrong act for a right one.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from chamberwise.engine.drill.wording.matching import Understood, understand
from chamberwise.engine.drill.wording.phrasebook import Target, phrasebook_of

from tests.engine.drill.stage import scenario

PHRASINGS: dict[str, Any] = yaml.safe_load(
    Path(__file__).with_name("phrasings.yaml").read_text(encoding="utf-8")
)
BOOK = phrasebook_of(scenario())
LEAST = 0.9


def understood() -> Iterator[tuple[str, Target, Understood]]:
    for kind in ("means", "looks"):
        for name, said in PHRASINGS[kind].items():
            target = Target(act=name) if kind == "means" else Target(finding=name)
            for typed in said:
                yield typed, target, understand(BOOK, typed)


def test_nine_phrasings_of_ten_are_mapped() -> None:
    found = list(understood())
    mapped = [typed for typed, target, of in found if target in (*of.taken, *of.asked)]
    assert len(found) == 433
    assert len(mapped) / len(found) >= LEAST


def test_no_right_act_is_taken_for_a_wrong_one_nor_a_wrong_one_for_a_right_one() -> None:
    turned = [
        (typed, each)
        for typed, target, of in understood()
        for each in of.taken
        if BOOK.is_harmful(each) is not BOOK.is_harmful(target)
    ]
    assert turned == []


@pytest.mark.parametrize("case", PHRASINGS["never"], ids=lambda case: case["typed"])
def test_words_are_never_taken_for_what_they_deny(case: dict[str, Any]) -> None:
    taken = {each.act for each in understand(BOOK, case["typed"]).taken}
    assert not taken & set(case["taken for"])


@pytest.mark.parametrize("typed", PHRASINGS["nothing"])
def test_what_means_nothing_here_is_taken_for_nothing(typed: str) -> None:
    assert understand(BOOK, typed).taken == ()


@pytest.mark.parametrize("typed", PHRASINGS["triggers"])
def test_each_way_of_saying_what_it_is_is_heard(typed: str) -> None:
    assert understand(BOOK, typed).says_trigger
