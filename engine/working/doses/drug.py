"""A calculation of one drug from its recipes; drugs differ in recipes, cautions and sources."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.words import Source
from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain, pointed
from chamberwise.engine.working.doses.inputs import AMOUNT, STRENGTH, VOLUME
from chamberwise.engine.working.doses.recipe import Powder, Recipe, amounts, make_up
from chamberwise.engine.working.doses.triple import agree, hold_together
from chamberwise.engine.working.form import Calculation, Input, Kind, between, meaning_of
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.marks import told_mark
from chamberwise.engine.working.refusal import refused
from chamberwise.engine.working.sheet import Sheet

DISPLACEMENT = Input(
    name="displacement",
    symbol="d",
    meaning=N_("volume the powder displaces, from its label"),
    example="0.54 mL",
    unit="mL",
    also=("uL",),
    bare=False,
    hard=between("0", "5"),
    required=False,
)
IN_HAND = replace(STRENGTH, meaning=N_("strength on the vial in the hand, to compare"))
WRITTEN = replace(AMOUNT, meaning=N_("amount as it is written, to compare"))
LIMITS = (
    N_(
        "It is arithmetic of a recipe. It does not know the product in the hand: its "
        "label goes first."
    ),
    N_(
        "It does not know allergies, pregnancy, other drugs, or whether the eye should "
        "have it at all."
    ),
)
SECOND = N_(
    "A second person derives it anew, and reads back mg, mL and mg/mL. In one "
    "study injections meant to be 0.1 mL were 0.12 mL on average (read)."
)


def drug_calculation(
    name: str,
    title: str,
    recipes: tuple[Recipe, ...],
    cautions: tuple[str, ...],
    sources: tuple[Source, ...],
) -> Calculation:
    """Return the calculation of a drug."""
    by_name = {each.name: each for each in recipes}
    choices = tuple((each.name, each.title) for each in recipes)
    recipe_input = Input(
        name="recipe",
        meaning=meaning_of(choices),
        choices=choices,
        example=recipes[0].name,
        kind=Kind.WORD,
        words=tuple(by_name),
        required=len(recipes) > 1,
        given="" if len(recipes) > 1 else recipes[0].name,
    )
    has_powder = any(isinstance(each.start, Powder) and each.steps for each in recipes)

    def work(given: Given, sheet: Sheet) -> None:
        _work(given, sheet, by_name[given.word("recipe")], recipes)

    return Calculation(
        name=name,
        title=title,
        purpose=N_("How it is made up, and amount, volume and strength that agree."),
        inputs=(recipe_input, VOLUME, WRITTEN, IN_HAND, *((DISPLACEMENT,) if has_powder else ())),
        sources=(*sources, citations.SYRINGES),
        limits=LIMITS,
        cautions=(*cautions, SECOND),
        work=work,
    )


def _work(given: Given, sheet: Sheet, recipe: Recipe, recipes: tuple[Recipe, ...]) -> None:
    _compare_vial(given, recipe)
    sheet.head(f"{_(recipe.title)} ({told_mark(recipe.mark.value)})")
    displaced = given.number("displacement") if "displacement" in given else Decimal(0)
    strength = make_up(sheet, recipe, displaced)
    volume = given.number("volume") if "volume" in given else None
    found = list(amounts(sheet, recipe, volume))
    for each, amount in found:
        title = _("{volume} mL holds").format(volume=plain(each))
        sheet.conclude(f"amount-in-{pointed(each)}", title, amount, "mg", 4)
    if "amount" in given:
        _compare_amount(given.number("amount"), found, strength)
    sheet.conclude("strength", _("strength"), strength, "mg/mL", 4)
    told = _("; or ").join(
        _("{amount} mg in {volume} mL").format(amount=plain(amount), volume=plain(each))
        for each, amount in found
    )
    sheet.say(
        _("Read back: {told}, of {strength} mg/mL.").format(told=told, strength=plain(strength))
    )
    _beside(sheet, recipe, [each for each, _amount in found])
    if recipe.note:
        sheet.remark(_(recipe.note))
    if len(recipes) > 1:
        sheet.remark(_("Recipes are not mixed: each has a volume for its own strength."))


def _compare_vial(given: Given, recipe: Recipe) -> None:
    if "strength" not in given:
        return
    if isinstance(recipe.start, Powder):
        raise refused(
            "strength",
            _("this recipe starts from a powder, which has no strength yet"),
            _("A vial with a strength in mg/mL is another product."),
            _("Look at the vial in the hand, and at which recipe is meant."),
        )
    in_hand = given.number("strength")
    if not agree(in_hand, Decimal(1), Decimal(recipe.start)):
        raise refused(
            "strength",
            _(
                "the vial in the hand holds {in_hand} mg/mL, the recipe starts from {start} mg/mL"
            ).format(in_hand=plain(in_hand), start=plain(Decimal(recipe.start))),
            _("Made up by this recipe it comes to another dose."),
            _("Look at the vial, and at which recipe is meant."),
        )


def _compare_amount(
    written: Decimal, found: list[tuple[Decimal, Decimal]], strength: Decimal
) -> None:
    if len(found) > 1 and found[0][1] <= written <= found[-1][1]:
        return
    nearest = min(found, key=lambda each: abs(each[1] - written))
    hold_together(written, nearest[0], strength)


def _beside(sheet: Sheet, recipe: Recipe, volumes: list[Decimal]) -> None:
    for place, (name, strength) in enumerate(recipe.beside, start=1):
        sheet.take(f"b{place}", strength)
        for volume in volumes:
            sheet.take("v", volume)
            title = _("{name} in {volume} mL").format(name=_(name), volume=plain(volume))
            amount = sheet.work(f"mb{place}", title, f"b{place} * v", "mg")
            sheet.conclude(f"{name}-in-{pointed(volume)}", title, amount, "mg", 4)
