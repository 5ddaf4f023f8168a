"""Every dose that is printed comes from a named source, adds up, and is listed."""

from __future__ import annotations

import re
from decimal import Decimal

import pytest
from chamberwise.engine.model.words import Mark

from tests.conformance.doses import PRINTED, QUANTITY, Printed
from tests.conformance.driver import library
from tests.conformance.told_texts import texts

PERCENT_AS_MG_PER_ML = 10
"""One per cent is one gram in 100 mL, that is 10 mg per mL."""


def number(quantity: str) -> Decimal:
    found = re.match(r"[0-9.]+", quantity)
    assert found
    return Decimal(found.group())


def test_no_number_with_a_dose_unit_is_unlisted_and_none_listed_is_gone() -> None:
    found = {
        (text.file, text.text): tuple(QUANTITY.findall(text.text))
        for text in texts()
        if text.file != "sources" and QUANTITY.search(text.text)
    }
    assert found == {(each.file, each.text): each.quantities for each in PRINTED}


@pytest.mark.parametrize("printed", PRINTED, ids=lambda each: each.text)
def test_the_source_stands_beside_the_number(printed: Printed) -> None:
    beside = [text for text in texts() if (text.file, text.text) == (printed.file, printed.text)]
    assert beside
    assert all(printed.source in text.sources for text in beside)


@pytest.mark.parametrize("printed", PRINTED, ids=lambda each: each.text)
def test_a_label_is_read_and_memory_is_called_memory(printed: Printed) -> None:
    mark = library().shared.sources[printed.source].mark
    assert (mark is Mark.READ) == ("read" in printed.from_where)
    assert (mark is Mark.MEMORY) == printed.from_where.startswith("memory")


@pytest.mark.parametrize("printed", PRINTED, ids=lambda each: each.text)
def test_per_cent_and_milligrams_per_millilitre_agree(printed: Printed) -> None:
    percent = [number(each) for each in printed.quantities if each.endswith("%")]
    strength = [number(each) for each in printed.quantities if each.endswith("mg per mL")]
    if percent:
        assert [each * PERCENT_AS_MG_PER_ML for each in percent] == strength


def test_the_dose_of_cefuroxime_is_volume_times_strength() -> None:
    dose, volume, strength = next(
        map(number, each.quantities) for each in PRINTED if len(each.quantities) == 3
    )
    assert dose == volume * strength
    assert Decimal(50) / Decimal(5) == strength, "the vial of the label"


@pytest.mark.parametrize(
    ("source", "most"), [("acetylcholine-label", Decimal(20)), ("carbachol-label", Decimal("0.05"))]
)
def test_the_largest_printed_volume_is_what_the_label_allows(source: str, most: Decimal) -> None:
    """20 mg is the whole vial of acetylcholine; 0.05 mg is 0.5 mL of carbachol."""
    printed = [
        quantity for each in PRINTED if each.source == source for quantity in each.quantities
    ]
    strength = max(number(each) for each in printed if each.endswith("mg per mL"))
    volume = max(number(each) for each in printed if each.endswith(" mL") and "per" not in each)
    assert strength * volume == most


@pytest.mark.parametrize("weight", range(20, 151))
def test_the_suggested_lidocaine_ceiling_is_the_lowest_of_the_labels(weight: int) -> None:
    by_weight = Decimal("4.5") * weight
    suggested = min(by_weight, Decimal(200))
    assert suggested <= min(Decimal(200), min(by_weight, Decimal(300)))
    choice = library().pathways["posterior-capsule-rupture"].words.findings["lidocaine-ceiling"]
    assert choice.choice
    assert choice.choice.suggested == "by-weight-to-two-hundred"


@pytest.mark.parametrize(
    "unlisted", ["Give 500 mg.", "Inject 0.2 mL.", "Set 400 mmHg.", "Use 5 %."]
)
def test_a_new_dose_would_be_found(unlisted: str) -> None:
    assert QUANTITY.search(unlisted)
    assert unlisted not in {each.text for each in PRINTED}
