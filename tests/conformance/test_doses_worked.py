"""Doses against labels and published series; each row says which."""

from __future__ import annotations

from decimal import Decimal

import pint
import pytest
from chamberwise.engine.working.doses.triple import agree

from tests.conformance.working_out import refusals, work

RECIPES = (
    ("cefuroxime", "licensed-vial", {"0.1": "1"}, "10", "label, read"),
    ("cefuroxime", "from-750-one-step", {"0.1": "1"}, "10", "common practice; arithmetic"),
    ("cefuroxime", "from-750-two-steps", {"0.1": "1"}, "10", "common practice; arithmetic"),
    ("moxifloxacin", "undiluted", {"0.1": "0.5"}, "5", "clinical alert, read"),
    ("moxifloxacin", "diluted", {"0.3": "0.45", "0.4": "0.6"}, "1.5", "recommendation, read"),
    ("moxifloxacin", "older", {"0.1": "0.1"}, "1", "abstract of 2008, read"),
    ("moxifloxacin", "at-5.45", {"0.05": "0.2725"}, "5.45", "article, read; it prints 0.27"),
    ("triamcinolone", "label-vitreous", {"0.025": "1", "0.1": "4"}, "40", "label, read"),
    ("triamcinolone", "chamber", {"0.1": "0.4", "0.2": "0.8"}, "4", "common practice"),
    ("phenylephrine", "trial", {"0.6": "9"}, "15", "trial, read"),
    ("phenylephrine", "from-2.5-percent", {"1.5": "6.25"}, "4.1667", "poster, read; 0.42 %"),
    ("phenylephrine", "combined", {"0.2": "0.62"}, "3.1", "label, read"),
    ("acetylcholine", "vial", {"0.5": "5", "2": "20"}, "10", "label, read"),
    ("carbachol", "vial", {"0.5": "0.05"}, "0.1", "label, read"),
)


@pytest.mark.parametrize(
    ("name", "recipe", "amounts", "strength", "source"), RECIPES, ids=lambda each: str(each)[:18]
)
def test_a_recipe(
    name: str, recipe: str, amounts: dict[str, str], strength: str, source: str
) -> None:
    found = work(name, recipe=recipe)
    assert source
    assert found.result("strength") == Decimal(strength)
    told = {volume: found.result(f"amount-in-{volume}") for volume in amounts}
    assert told == {volume: Decimal(amount) for volume, amount in amounts.items()}
    assert len([each for each in found.results if each.name.startswith("amount")]) == len(told)


def test_the_combined_mydriatic_tells_all_three() -> None:
    """0.2 mL is 0.04, 0.62 and 2 mg (label, read)."""
    found = work("phenylephrine", recipe="combined")
    assert found.result("tropicamide-in-0.2") == Decimal("0.04")
    assert found.result("lidocaine-in-0.2") == Decimal(2)


@pytest.mark.parametrize("name", ["cefuroxime", "moxifloxacin", "triamcinolone", "carbachol"])
def test_the_volume_of_one_recipe_is_refused_by_another(name: str) -> None:
    assert "is not what this recipe gives" in refusals(name, volume="1.2 mL")


def test_a_tenfold_slip_is_named() -> None:
    """9 mg for 1 mg reached 13 eyes (read)."""
    assert "look at the decimal point" in refusals("cefuroxime", amount="10 mg")
    assert "disagree" in refusals("cefuroxime", amount="9 mg")
    assert "disagree" in refusals("dose", amount="1 mg", volume="0.1 mL", strength="9 mg/mL")


def test_a_vial_of_another_strength_is_refused() -> None:
    assert "the vial in the hand holds 1.5 mg/mL" in refusals("moxifloxacin", strength="0.15 %")
    assert "starts from a powder" in refusals("cefuroxime", strength="10 mg/mL")


def test_three_figures_agree_within_their_rounding() -> None:
    """6.25 mg in 1.5 mL is printed as 0.42 % on the poster (read), which is 4.17 mg/mL."""
    assert agree(Decimal("6.25"), Decimal("1.5"), Decimal("4.17"))
    assert not agree(Decimal("6.25"), Decimal("1.5"), Decimal("4.3"))


def test_what_the_powder_displaces_is_taken_off_the_solvent() -> None:
    found = work("cefuroxime", recipe="from-750-two-steps", displacement="0.5 mL")
    assert any("750 mg with 7 mL" in getattr(each, "text", "") for each in found.lines)


def test_the_mix_of_adrenaline_and_lidocaine() -> None:
    """9 + 3 + 4 mL: lidocaine 0.75 %, adrenaline 1 in 4,000 (recipe read; arithmetic)."""
    lidocaine = work("dilution", strength="4 %", taken="3 mL", made_up_to="16 mL")
    adrenaline = work("dilution", strength="1 mg/mL", taken="4 mL", made_up_to="16 mL")
    assert lidocaine.result("strength") == Decimal("7.5")
    assert adrenaline.result("strength") == Decimal("0.25")


LIDOCAINE = (
    ("50", "150", "7.5", "225", "350", "17.5"),
    ("60", "180", "9", "270", "420", "21"),
    ("70", "200", "10", "300", "490", "24.5"),
    ("80", "200", "10", "300", "500", "25"),
)
"""Weight; 3 mg/kg to 200 mg in mg and mL of 2 %; 4.5 mg/kg to 300 mg; with adrenaline 7 mg/kg to
500 mg in mg and mL of 2 % (limits on labels, read; products computed)."""


@pytest.mark.parametrize(("weight", "low", "low_ml", "us", "high", "high_ml"), LIDOCAINE)
def test_lidocaine_by_weight(
    weight: str, low: str, low_ml: str, us: str, high: str, high_ml: str
) -> None:
    strict = work("lidocaine-ceiling", weight=f"{weight} kg", limit="stricter")
    assert (strict.result("ceiling"), strict.result("volume")) == (Decimal(low), Decimal(low_ml))
    assert ("US label, plain", f"{us} mg", "read") in strict.tables[0].rows
    mixed = work("lidocaine-ceiling", weight=f"{weight} kg", adrenaline="yes")
    assert (mixed.result("ceiling"), mixed.result("volume")) == (Decimal(high), Decimal(high_ml))


@pytest.mark.parametrize(
    ("weight", "ceiling", "volume"),
    [("40", "180", "9"), ("44.4", "199.8", "10"), ("90", "200", "10")],
)
def test_the_lower_of_the_published_limits(weight: str, ceiling: str, volume: str) -> None:
    """4.5 mg/kg to 200 mg (Irish label, read): 40 kg 180 mg; 200 mg from 44.4 kg on."""
    found = work("lidocaine-ceiling", weight=f"{weight} kg")
    assert (found.result("ceiling"), found.result("volume")) == (Decimal(ceiling), Decimal(volume))


def test_what_was_given_counts_whatever_its_route() -> None:
    """5 mL of 2 % is 100 mg (label, read: 20 mg/mL)."""
    found = work("lidocaine-ceiling", already="100 mg 2 mg")
    assert (found.result("left"), found.result("volume")) == (Decimal(98), Decimal("4.9"))
    spent = work("lidocaine-ceiling", already="150 mg 100 mg")
    assert spent.result("left") == 0
    assert "Nothing is left under the ceiling." in spent.remarks


def test_what_was_given_has_to_be_said() -> None:
    assert "`already` is missing" in refusals("lidocaine-ceiling", already="")
    assert "`weight` is missing" in refusals("lidocaine-ceiling", weight="")


MANNITOL = (
    ("50", "250", "375", "500"),
    ("60", "300", "450", "600"),
    ("70", "350", "525", "700"),
    ("80", "400", "600", "800"),
)
"""Weight; mL of 20 % for 1, 1.5 and 2 g/kg (label range read; products computed)."""


@pytest.mark.parametrize(("weight", "one", "low", "high"), MANNITOL)
def test_mannitol_by_weight(weight: str, one: str, low: str, high: str) -> None:
    label = work("mannitol", weight=f"{weight} kg", strength="20 %")
    habit = work("mannitol", weight=f"{weight} kg", strength="200 mg/mL", range="theatre-habit")
    assert label.result("low-volume") == Decimal(low)
    assert label.result("high-volume") == Decimal(high)
    assert habit.result("high-volume") == Decimal(one)


LIPID = (
    ("50", "75", "12.5", "600"),
    ("60", "90", "15", "720"),
    ("70", "105", "17.5", "840"),
    ("80", "120", "20", "960"),
)
"""Weight; bolus in mL, rate in mL/min, ceiling in mL (guideline read second-hand; computed)."""


@pytest.mark.parametrize(("weight", "bolus", "rate", "ceiling"), LIPID)
def test_lipid_by_weight(weight: str, bolus: str, rate: str, ceiling: str) -> None:
    found = work("lipid-rescue", weight=f"{weight} kg")
    told = [found.result(name) for name in ("bolus", "rate", "ceiling")]
    assert told == [Decimal(each) for each in (bolus, rate, ceiling)]


def test_acetazolamide_made_up() -> None:
    """500 mg with at least 5 mL; above 1 g in 24 hours adds nothing (label, read)."""
    found = work("acetazolamide", already="750 mg")
    assert found.result("strength") == Decimal(100)
    assert found.result("left") == Decimal(250)
    assert "`water` is 4 mL" in refusals("acetazolamide", water="4 mL")


@pytest.mark.parametrize(
    ("name", "question"),
    [
        ("acetazolamide", "sulphonamide_allergy"),
        ("acetazolamide", "adrenal_failure"),
        ("acetazolamide", "low_sodium_or_potassium"),
        ("mannitol", "anuria"),
        ("mannitol", "pulmonary_oedema"),
        ("mannitol", "heart_failure"),
    ],
)
@pytest.mark.parametrize("said", ["yes", "unknown", ""])
def test_contraindications_come_before_any_figure(name: str, question: str, said: str) -> None:
    told = refusals(name, **{question: said})
    assert "no dose is worked" in told or "is missing" in told


THEIRS = pint.UnitRegistry()
HEADS = (
    ("30", "22.1"),
    ("45", "33.1"),
    ("60", "44.1"),
    ("65", "47.8"),
    ("70", "51.5"),
    ("90", "66.2"),
    ("110", "80.9"),
)
"""Centimetres of water and mmHg (arithmetic)."""


@pytest.mark.parametrize(("height", "pressure"), HEADS)
def test_infusion_pressure(height: str, pressure: str) -> None:
    found = work("infusion-pressure", height=f"{height} cm").result("pressure")
    assert found == Decimal(pressure)
    known = THEIRS.Quantity(float(height), "centimeter_H2O").to("mmHg").magnitude
    assert abs(float(found) - known) < 0.051
