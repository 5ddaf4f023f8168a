"""Forms that published lists forbid or prescribe, each with the source it comes from."""

from __future__ import annotations

import pytest
from chamberwise.engine.checks.wording import RULES

RULE_OF = {rule.slug: rule for rule in RULES}
ON_DOSES = [rule for rule in RULES if "reason" in rule.reads and "title" in rule.reads]

ISMP = "ISMP list of error-prone abbreviations and dose designations (secondary copy read)"
JOINT_COMMISSION = "Joint Commission list of abbreviations not to be used (secondary copy read)"
UK_PRESCRIBING = "UK rule for writing prescriptions (secondary copy read)"
USP = "US labelling rule of 2016 against ratio strengths (from memory)"
LANGUAGE = "Just and Clark 1973 on negatives (secondary source read)"
OURS = "tested with the reference, no source"

MUST_FAIL = [
    ("5.0 mg", "trailing-zero", JOINT_COMMISSION),
    (".5 mL", "naked-decimal", JOINT_COMMISSION),
    ("10mg", "run-together-unit", ISMP),
    ("4U", "unit-abbreviation", JOINT_COMMISSION),
    ("50 ug", "microgram-sign", ISMP),
    ("OD", "eye-abbreviation", ISMP),
    ("epinephrine1 mg", "drug-and-number-together", ISMP),
    ("1:1000", "ratio-strength", USP),
    ("Do not stop unless not stable", "double-negative", LANGUAGE),
    ("1 mg in 0.1 mL with 1 mg per mL", "dose-arithmetic", OURS),
    ("50 mcg", "mass-abbreviation", UK_PRESCRIBING),
    ("2 cc", "cc-for-millilitre", ISMP),
    ("QD", "daily-abbreviation", JOINT_COMMISSION),
    ("QOD", "daily-abbreviation", JOINT_COMMISSION),
    ("> 5 mg", "dose-symbol", ISMP),
    ("2 mLs", "unit-plural-or-stop", ISMP),
    ("100000 units", "ungrouped-thousands", ISMP),
]

MUST_PASS = [
    ("5 mg", JOINT_COMMISSION),
    ("0.5 mL", JOINT_COMMISSION),
    ("10 mg", ISMP),
    ("4 units", JOINT_COMMISSION),
    ("50 micrograms", UK_PRESCRIBING),
    ("right eye", ISMP),
    ("1 mg per mL", USP),
    ("1 mg in 0.1 mL with 10 mg per mL", OURS),
    ("100,000 units", ISMP),
    ("once a day", JOINT_COMMISSION),
]


@pytest.mark.parametrize(("text", "slug", "source"), MUST_FAIL)
def test_a_forbidden_form_is_reported(text: str, slug: str, source: str) -> None:
    assert any(RULE_OF[slug].find(text)), source


@pytest.mark.parametrize(("text", "source"), MUST_PASS)
def test_a_prescribed_form_passes(text: str, source: str) -> None:
    assert [rule.slug for rule in ON_DOSES if any(rule.find(text))] == [], source
