"""Whether an operation finds what it expects, and what to write where it does not."""

from __future__ import annotations

import re

from chamberwise.engine.checks.wording.negation import negators
from chamberwise.engine.checks.wording.opposites import turned_round
from chamberwise.engine.comparing.wording import named_otherwise
from chamberwise.engine.diagnostics.problem import Note, Pointer, Problem, pointer_text
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import pgettext
from chamberwise.engine.local import codes
from chamberwise.engine.local.locating import Located
from chamberwise.engine.reading import codes as of_form
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.reading.local_sheet import Verb
from chamberwise.engine.reading.nodes import digest_of, in_words, plain, told
from chamberwise.engine.reading.tree import Node, Scalar, Tree

NOTHING = "nothing"
_FIGURE = re.compile(r"\d+(?:[.,/:]\d+)*")


def unmet(loaded: Loaded, sheet: Tree, place: Located) -> Problem | None:
    """Return the problem of an operation that does not find what it expects."""
    operation, found = place.operation, place.found
    if operation.verb is Verb.ADD:
        return _there_already(loaded, sheet, place) if found is not None else None
    expects = operation.expects
    if operation.verb is Verb.SET and expects is None and _is_so_already(place):
        return None
    if expects is None and found is not None:
        message = _("it does not say what it expects at `{place}`").format(
            place=pointer_text(place.place)
        )
        advice = _("Read what stands there now, then add `expects: {found}`.").format(
            found=told(found)
        )
        at = operation.at
        span = sheet.span(operation.said, at_key=True)
        return of_form.MISSING_KEY.at(sheet.file, at, span, message, advice, _now(loaded, place))
    if expects is None or _is_as_expected(expects, found):
        return None
    return _stale(loaded, sheet, place, expects)


def _is_so_already(place: Located) -> bool:
    new, found = place.operation.to, place.found
    return found is None or new is None or plain(found) == plain(new)


def _is_as_expected(expects: Node, found: Node | None) -> bool:
    if found is None:
        return bool(plain(expects) == NOTHING)
    is_digest = isinstance(expects, Scalar) and expects.text.strip() == digest_of(found)
    return is_digest or bool(plain(expects) == plain(found))


def _stale(loaded: Loaded, sheet: Tree, place: Located, expects: Node) -> Problem:
    at = (*place.operation.at, "expects")
    expected = in_words(expects)
    if place.found is None:
        message = _("it expects `{expected}`, and nothing stands there now").format(
            expected=expected
        )
        advice = _("Write `expects: nothing` if it still fits, or delete it.")
        return codes.STALE.at(sheet.file, at, sheet.span(at), message, advice)
    message = _("it expects `{expected}`, and `{found}` stands there now").format(
        expected=expected, found=in_words(place.found)
    )
    advice = _("Read what stands there. If this still fits, write `expects: {found}`.").format(
        found=told(place.found)
    )
    notes = _now(loaded, place)
    return codes.STALE.at(sheet.file, at, sheet.span(at), message, advice, notes)


def _there_already(loaded: Loaded, sheet: Tree, place: Located) -> Problem:
    operation = place.operation
    message = _("`{place}` is there already").format(place=pointer_text(place.place))
    advice = _("Change it under `change:` with what you expect there, or give yours another name.")
    span = sheet.span(operation.said, at_key=False)
    return codes.STALE.at(sheet.file, operation.said, span, message, advice, _now(loaded, place))


def more_than_wording(sheet: Tree, place: Located) -> Problem | None:
    """Return the problem of a wording that changes a figure, a negation, a direction or a drug."""
    new, old = place.operation.to, place.found
    if not isinstance(new, Scalar) or not isinstance(old, Scalar):
        return None
    at: Pointer = (*place.operation.at, "says")
    figures = [sorted(_FIGURE.findall(each.text)) for each in (old, new)]
    turned = [len(list(negators(each.text, adjectives=True))) for each in (old, new)]
    if figures[0] != figures[1]:
        was, now = (" ".join(each) or pgettext("figures", "none") for each in figures)
        message = _("the figures change from {was} to {now}").format(was=was, now=now)
    elif turned[0] != turned[1]:
        message = _("the sentence says no where it said yes, or the other way round")
    elif opposite := turned_round(old.text, new.text):
        message = _("it says `{now}` where it said `{was}`").format(
            was=opposite[0], now=opposite[1]
        )
    elif named := named_otherwise(old.text, new.text):
        was, now = named
        message = _("it names `{now}` where it named `{was}`")
        if not was or not now:
            message = _("it names `{now}`, and did not") if now else _("it names `{was}` no more")
        message = message.format(was=was, now=now)
    else:
        return None
    advice = _("If that is meant, write it under `changes:` with `change:`, `to:` and `because:`.")
    return codes.MORE_THAN_WORDING.at(sheet.file, at, sheet.span(at), message, advice)


def _now(loaded: Loaded, place: Located) -> tuple[Note, ...]:
    tree = loaded.files[place.file].tree
    return (Note(_("what stands there now"), place.file, tree.span(place.place, at_key=True)),)
