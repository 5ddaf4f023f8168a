"""From a pathway to the control of a sheet of it."""

from __future__ import annotations

from datetime import date

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.local import Local
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.words import ActId
from chamberwise.engine.proof.rules import switched_off
from chamberwise.exports.control.content import Control, day
from chamberwise.exports.language.unreviewed import unreviewed_language
from chamberwise.exports.record.translation import texts_in_english, translation_approval


def control_of(
    pathway: Pathway,
    sheet: str,
    made: date,
    code: str,
    modules: tuple[str, ...] = (),
    unit: str | None = None,
    library: Library | None = None,
) -> Control:
    """Return document control; `sheet` is the kind in words, `code` the stamp as typed.

    Without approval by name nobody is told as approver, whatever else the file says; of a
    translation, who approved the English. The library tells whether a unit's sheet lies over it.
    """
    local = library.local_to(pathway.id) if library else None
    off = switched_off(library, pathway.id).values() if library else ()
    translation = library.translation if library else None
    in_english = translation.approved_in_english if translation else ()
    is_approved = pathway.is_approved or pathway.id in in_english
    by = translation_approval(library, pathway.id) if library else ""
    return Control(
        title=pathway.title,
        sheet=sheet,
        document=pathway.id,
        edition=pathway.edition,
        authors=pathway.authors,
        approved_by=pathway.approved_by if is_approved else None,
        approved_on=pathway.approved_on if is_approved else None,
        reviewed=pathway.reviewed,
        review_by=pathway.review_by,
        unit=unit,
        made=made,
        code=code,
        modules=modules,
        over=local.base_edition if local else "",
        switched_off=tuple(
            (rule.title, f"{each.by}, {day(each.on)}: {each.because}") for rule, each in off
        ),
        translation="" if by else unreviewed_language(),
        translation_by=by,
        texts=texts_in_english(library, pathway.id) if library else "",
    )


def phone_told(local: Local | None, act: ActId) -> str:
    """Return how help is called, on one line; nothing where the unit has not set it."""
    phone = local.phones.get(act) if local else None
    if phone is None:
        return ""
    if not phone.outside_hours:
        return f"{phone.number}, {phone.hours}"
    return _("{number}, {hours}; otherwise {other}").format(
        number=phone.number, hours=phone.hours, other=phone.outside_hours
    )


def place_told(local: Local | None, item: str) -> str:
    """Return where an item of the kit lies and how long fetching it takes, if the unit said so."""
    product = local.products.get(item) if local else None
    place = local.places.get(product.place) if local and product else None
    if product is None or place is None:
        return ""
    shelf = f", {product.shelf}" if product.shelf else ""
    return _("{place}, {walk} s to fetch").format(place=f"{place.title}{shelf}", walk=place.walk)
