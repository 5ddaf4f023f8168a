"""Whatever a unit chooses among the positions left to it, every safety rule still holds."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.words import Words
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.verdict import Violated
from chamberwise.engine.reading.library import load_library

from tests.support.thorough import cases

SHIPPED = load_library(Path(__file__).resolve().parents[2] / "protocols").library


def positions() -> list[tuple[str, str, str]]:
    """Return every pathway with a choice it may depend on and one of its positions."""
    return [
        (name, finding.id, value.id)
        for name in SHIPPED.pathways
        for finding in SHIPPED.words(name).findings.values()
        if finding.choice and finding.choice.chosen is None
        for value in finding.values
    ]


def with_chosen(pathway: str, choice: str, position: str) -> Library:
    """Return the shipped library in which one choice is made, wherever it is defined."""
    own = SHIPPED.pathways[pathway]

    def made(words: Words) -> Words:
        finding = words.findings.get(choice)
        if finding is None or finding.choice is None:
            return words
        chosen = replace(finding, choice=replace(finding.choice, chosen=position))
        return replace(words, findings={**words.findings, choice: chosen})

    changed = replace(own, words=made(own.words))
    return Library(made(SHIPPED.shared), {**SHIPPED.pathways, pathway: changed})


@pytest.mark.parametrize(
    ("pathway", "choice", "position"), cases(positions()[::29], positions()), ids=str
)
def test_no_position_left_to_the_unit_breaks_a_rule(
    pathway: str, choice: str, position: str
) -> None:
    verdicts = prove(with_chosen(pathway, choice, position), pathway).verdicts
    assert verdicts
    assert [each.rule for each in verdicts if isinstance(each, Violated)] == []
