"""Whether the names under which a sheet sets something are names of the pathways it covers."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Pointer, Problem
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.local import codes
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.local import Local
from chamberwise.engine.reading.tree import Tree


def unknown_names(library: Library, local: Local, sheet: Tree) -> Iterator[Problem]:
    """Yield a problem for every phone, product, page, place or rule that nothing answers to."""
    words = [library.words(name) for name in local.covers]
    acts = {name: act for each in words for name, act in each.acts.items()}
    kit = {name for each in words for name in each.kit}
    rules = {name for each in words for name in each.rules}
    calls = [name for name, act in acts.items() if act.calls_for_help]
    pages = local.machine.pages if local.machine else ()
    asked: tuple[tuple[Pointer, Iterable[str], Iterable[str], str], ...] = (
        (("phones",), local.phones, calls, _("act that calls for help")),
        (("products",), local.products, kit, _("kit item")),
        (("machine", "pages"), pages, acts, _("act")),
        (("switched off",), local.switched_off, rules, _("safety rule")),
    )
    for above, names, known, kind in asked:
        for name in names:
            if name not in known:
                at = (*above, name)
                yield _problem(
                    sheet,
                    at,
                    _("there is no {kind} `{name}`").format(kind=kind, name=name),
                    name,
                    sorted(known),
                )
    for name, product in local.products.items():
        if product.place not in local.places:
            at = ("products", name, "place")
            message = _("`{place}` is none of the sheet's places").format(place=product.place)
            yield _problem(sheet, at, message, product.place, list(local.places))


def _problem(sheet: Tree, at: Pointer, message: str, name: str, known: list[str]) -> Problem:
    listed = ", ".join(f"`{each}`" for each in known[:8])
    advice = did_you_mean(
        name, known, _("There are {listed}.").format(listed=listed) if listed else _("Define it.")
    )
    return codes.NAMES_NOTHING.at(sheet.file, at, sheet.span(at, at_key=True), message, advice)
