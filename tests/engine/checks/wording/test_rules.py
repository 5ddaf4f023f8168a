"""What holds of every rule: its own examples, its texts for authors, and any input whatever."""

from __future__ import annotations

import pytest
from chamberwise.engine.checks.wording import RULES
from chamberwise.engine.checks.wording.rule import WordingRule
from chamberwise.engine.checks.wording.verbs import PLAIN_VERBS, VERBS_OR_NOUNS
from hypothesis import given
from hypothesis import strategies as st

every_rule = pytest.mark.parametrize("rule", RULES, ids=[rule.slug for rule in RULES])


@every_rule
def test_the_wrong_example_is_reported(rule: WordingRule) -> None:
    assert any(rule.find(rule.wrong))


@every_rule
def test_the_right_example_passes_every_rule_on_its_kinds(rule: WordingRule) -> None:
    others = [other for other in RULES if other.reads & rule.reads]
    assert [other.slug for other in others if any(other.find(rule.right))] == []


@every_rule
def test_every_hit_says_what_to_write(rule: WordingRule) -> None:
    for hit in rule.find(rule.wrong):
        assert hit.message
        assert hit.advice


@every_rule
def test_a_rule_tells_its_harm_and_its_source(rule: WordingRule) -> None:
    assert rule.why.endswith(".")
    assert rule.source
    assert rule.reads
    assert rule.slug == rule.find.__module__.rpartition(".")[2].replace("_", "-")


def test_slugs_are_unique() -> None:
    slugs = [rule.slug for rule in RULES]
    assert len(set(slugs)) == len(slugs)


def test_no_verb_stands_in_both_lists() -> None:
    assert PLAIN_VERBS.isdisjoint(VERBS_OR_NOUNS)


PIECES = st.sampled_from(
    [
        *("and ", "then ", "; ", ", ", ". ", "! ", "\n\n", '"', "“", "”", "'", "’", "(", "…"),
        *("not ", "no ", "Do not ", "unless ", "never ", "if ", "If ", "that ", "to ", "is "),
        *("withdraw ", "suture ", "the tip ", "consider ", "may ", "it ", "This ", "normal "),
        *(
            "5",
            "0",
            "10",
            "1:",
            "1 in ",
            ".",
            ",",
            "/",
            "-",
            "–",
            " to ",
            "000",
            "%",
            "+",
            "<",
            "@",
        ),
        *(" mg", "mL", " per mL", "/mL", " units", "U", "IU", "cc", "mcg", "µg", "mm", "mmHg"),
        *("OD ", "AS ", "QD ", "lidocaine ", "İ", "ß", "K", "²", "٣", "\u00a0", "\u2028", "\x00"),
    ]
)


@every_rule
@given(text=st.text(max_size=200) | st.lists(PIECES, max_size=40).map("".join))
def test_hits_lie_inside_any_text(rule: WordingRule, text: str) -> None:
    for hit in rule.find(text):
        assert 0 <= hit.start < hit.end <= len(text)


@every_rule
@given(text=st.lists(PIECES, max_size=40).map("".join))
def test_hits_come_in_order_and_are_repeatable(rule: WordingRule, text: str) -> None:
    hits = list(rule.find(text))
    assert hits == list(rule.find(text))
    assert [hit.start for hit in hits] == sorted(hit.start for hit in hits)
