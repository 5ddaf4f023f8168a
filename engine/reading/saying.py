"""What a problem of form is told with: places, keys and lists of them in words."""

from __future__ import annotations

from collections.abc import Iterable

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.language.capitals import small
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading import tree
from chamberwise.engine.reading.characters import in_short
from chamberwise.engine.reading.shapes import Key


def slip(entry: tree.Entry) -> str:
    """Return what most likely went wrong where a piece of a sentence stands as a key."""
    text = entry.key.text
    is_bare = isinstance(entry.value, tree.Scalar) and not entry.value.text
    if is_bare and ":" in text:
        before, after = text.split(":", 1)
        return _("Put a space after the colon: `{before}: {after}`.").format(
            before=in_short(before), after=in_short(after.strip())
        )
    if is_bare and (" " in text or text.endswith(".") or _has_no_colon(entry)):
        return _(
            "A comma between {opening} and {closing} cuts a text in two. "
            "Put the whole text in quotes."
        ).format(opening="{", closing="}")
    return ""


def _has_no_colon(entry: tree.Entry) -> bool:
    """Whether nothing stands between a key and the value that it does not have."""
    key, value = entry.key.span, entry.value.span
    return (key.end_line, key.end_column) == (value.line, value.column)


def to_add(name: str, key: Key) -> str:
    """Return the advice to add a key that is missing."""
    return _("Add `{name}:`, {doc}.").format(name=name, doc=small(_(key.doc)))


def no_key(text: str, name: str) -> str:
    """Return that a key is none of a shape, by the name of the shape."""
    return _("`{key}` is no key of {name}").format(key=in_short(text), name=name)


def key_at(at: Pointer) -> str:
    """Return a place by its key, as it begins a sentence."""
    return f"`{at[-1]}`" if at and isinstance(at[-1], str) else _("this place")


def one_or(names: Iterable[str]) -> str:
    """Return names of which one is meant."""
    return _(" or ").join(f"`{name}`" for name in names)


def both_and(names: Iterable[str]) -> str:
    """Return names that are meant together."""
    return _(" and ").join(f"`{name}`" for name in names)


def at_the_start(name: str) -> str:
    """Return the name of a shape as it begins a sentence."""
    return name[0].upper() + name[1:]
