"""From the place that a sheet names to a file below it, and whether a sheet may touch it."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Pointer, pointer_text
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.reading.form_pathway import PATHWAY
from chamberwise.engine.reading.library import File, Loaded
from chamberwise.engine.reading.local_sheet import Operation, Verb
from chamberwise.engine.reading.nodes import node_at
from chamberwise.engine.reading.tree import Listing, Node, Table

_FRAME = ("title", "summary", "start", "phases", "steps", "wall chart", "cases")
_PLAIN_WORDS = ("duties", "kit", "sources")
_MEANING = ("findings", "choices", "acts", "rules")
TABLES = (*_PLAIN_WORDS, *_MEANING)


class RefusedError(Exception):
    """A sheet may not do this; `args` say why and what to do instead."""

    def __init__(self, message: str, advice: str) -> None:
        super().__init__(message)
        self.message, self.advice = message, advice


class NowhereError(RefusedError):
    """What an operation names is not there."""


@dataclass(frozen=True, slots=True)
class Located:
    """Where an operation takes hold: a file, a place in it, and what stands there now."""

    operation: Operation
    file: str
    place: Pointer
    found: Node | None


def located(loaded: Loaded, covers: tuple[PathwayId, ...], operation: Operation) -> Located:
    """Return where an operation takes hold. Raises `RefusedError` or `NowhereError`."""
    pathway = operation.pathway or covers[0]
    if pathway not in covers:
        message = _("the sheet does not reach a pathway `{pathway}`").format(pathway=pathway)
        advice = did_you_mean(
            pathway, covers, _("It reaches {pathways}.").format(pathways=_listed(covers))
        )
        raise NowhereError(message, advice)
    _refuse(operation)
    file = _file(loaded, covers, operation)
    found = node_at(file.tree.root, operation.place)
    if found is None and operation.verb in (Verb.CHANGE, Verb.REMOVE, Verb.REWORD):
        raise _nowhere(_names(loaded, covers, operation), file, operation.place)
    if operation.verb in (Verb.ADD, Verb.SET):
        _refuse_orphan(_names(loaded, covers, operation), file, operation)
    return Located(operation, file.shown_as, operation.place, found)


def _refuse(operation: Operation) -> None:
    """Refuse what is not a sheet's to do, whatever stands there."""
    root, *rest = operation.place
    said = pointer_text(operation.place)
    if operation.verb is Verb.SET:
        return
    if root not in (*_FRAME, *TABLES) and root not in PATHWAY.keys:
        message = _("there is no `{root}` in a pathway").format(root=root)
        known = (*_FRAME, *TABLES)
        advice = did_you_mean(
            str(root).lower(), known, _("There stand {names}.").format(names=_listed(known))
        )
        raise NowhereError(message, advice)
    if root not in (*_FRAME, *TABLES):
        advice = _("A sheet changes {keys}; it has keys of its own for the rest.").format(
            keys=_listed(_FRAME)
        )
        raise RefusedError(
            _("`{said}` is not for a local sheet to change").format(said=said), advice
        )
    if operation.verb is Verb.REWORD:
        if root == "rules":
            raise RefusedError(
                _("`{said}` belongs to a safety rule").format(said=said), _(_ON_RULES)
            )
    elif root in _MEANING and (operation.verb is not Verb.ADD or len(rest) != 1):
        advice = _(_ON_MEANING.get(str(root), _ON_WORDS))
        raise RefusedError(_("`{said}` means the same in every unit").format(said=said), advice)
    elif operation.verb is Verb.REMOVE and (root in TABLES or not rest):
        raise RefusedError(
            _("`{said}` cannot be taken away by a sheet").format(said=said),
            _("Leave it unused instead."),
        )


_ON_RULES = N_(
    "A sheet may add rules. One that cannot be kept is named under `switched "
    "off:`, with who decided it, why and when."
)
_ON_WORDS = N_("Add a word with a name of its own under `changes:`, or reword it under `wording:`.")
_ON_MEANING = {
    "choices": N_("Set it under `choices:`, with the reason."),
    "rules": _ON_RULES,
}


def _file(loaded: Loaded, covers: tuple[PathwayId, ...], operation: Operation) -> File:
    """Return the file in which the place lies.

    A word is looked for in the pathway meant, then in every pathway covered, then among the shared.
    """
    place, meant = operation.place, operation.pathway or covers[0]
    own = loaded.source(meant)
    if place[0] not in TABLES or len(place) == 1:
        return own
    for name in (meant, *covers):
        if node_at(loaded.source(name).tree.root, place[:2]) is not None:
            return loaded.source(name)
    shared = loaded.defined.get((str(place[0]), str(place[1])))
    return loaded.files[shared[0]] if shared else own


def _names(loaded: Loaded, covers: tuple[PathwayId, ...], operation: Operation) -> list[str]:
    """Return every word of the table meant; nothing where no table is."""
    table = operation.place[0]
    if table not in TABLES:
        return []
    own = [node_at(loaded.source(name).tree.root, (table,)) for name in covers]
    names = [name for each in own if isinstance(each, Table) for name in each.entries]
    return [*names, *(name for kind, name in loaded.defined if kind == table)]


def _nowhere(words: list[str], file: File, place: Pointer) -> NowhereError:
    """Return what is missing, and what stands beside the place that was meant."""
    is_word = bool(words) and len(place) > 1
    for length in range(int(is_word), len(place)):
        if node_at(file.tree.root, place[: length + 1]) is None:
            above, part = node_at(file.tree.root, place[:length]), place[length]
            break
    where = _(" in `{place}`").format(place=pointer_text(place[:length])) if length else ""
    if isinstance(above, Listing):
        count = len(above.items)
        said = part + 1 if isinstance(part, int) else part
        return NowhereError(
            _("there is no item `{said}`{where}").format(said=said, where=where),
            _("It has {count} items, counted from 1.").format(count=count),
        )
    known = list(above.entries) if isinstance(above, Table) else []
    known = words if length == 1 and is_word else known
    otherwise = (
        _("There stand {names}.").format(names=_listed(known[:8]))
        if known
        else _("Look at {file}.").format(file=file.shown_as)
    )
    advice = did_you_mean(str(part), known, otherwise)
    return NowhereError(_("there is no `{part}`{where}").format(part=part, where=where), advice)


def _refuse_orphan(words: list[str], file: File, operation: Operation) -> None:
    """Refuse to put something where nothing stands that could hold it."""
    *above, last = operation.place
    holder = node_at(file.tree.root, tuple(above))
    if isinstance(holder, Listing) and isinstance(last, int) and last != len(holder.items):
        advice = _("The next item is number {number}.").format(number=len(holder.items) + 1)
        raise NowhereError(
            _("`{place}` is not the next item").format(place=pointer_text(operation.place)), advice
        )
    is_new_table = holder is None and len(above) == 1 and above[0] in TABLES
    if not is_new_table and not isinstance(holder, Listing if isinstance(last, int) else Table):
        if holder is None:
            raise _nowhere(words, file, tuple(above))
        message = _("`{place}` holds nothing called `{last}`").format(
            place=pointer_text(tuple(above)), last=last
        )
        advice = _("Name an item of a list by its number, and anything else by its name.")
        raise NowhereError(message, advice)
    if operation.after and operation.after not in getattr(holder, "entries", {}):
        known = list(getattr(holder, "entries", {}))
        advice = did_you_mean(
            operation.after, known, _("Name what it follows, or leave `after` out.")
        )
        raise NowhereError(
            _("there is no `{after}` that it could follow").format(after=operation.after), advice
        )


def _listed(names: tuple[str, ...] | list[str]) -> str:
    return ", ".join(f"`{name}`" for name in names)
