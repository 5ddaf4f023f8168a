"""What else differs between two libraries: files and shared words that no comparison rates.

Drills and translations lie beside the pathways; a word may stand in the vocabulary without a use.
Nobody should take silence about them for sameness.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.revision import as_revision, texts_below

if TYPE_CHECKING:
    from chamberwise.tui.command.versions import Side

FOLDERS = ("drills", "translations")
_WORDS = {
    "changed": N_("{name}: changed, and not rated here. Look at it by hand."),
    "is gone": N_("{name}: gone, and not rated here. Look whether it should be."),
    "is new": N_("{name}: new, and not rated here. Look at it by hand."),
}


def not_compared(old: Side, new: Side) -> dict[str, str]:
    """Return what changed of that, by file or by table and name, each with what became of it."""
    if not (old.is_library and new.is_library):
        return {}
    return {**_between(_files(old), _files(new)), **_between(_unused(old), _unused(new))}


def told(found: Mapping[str, str]) -> list[str]:
    """Return it in lines."""
    return [_(_WORDS[what]).format(name=name) for name, what in found.items()]


def _between(old: Mapping[str, Any], new: Mapping[str, Any]) -> dict[str, str]:
    gone = {name: "is gone" for name in old if name not in new}
    come = {name: "is new" for name in new if name not in old}
    changed = {name: "changed" for name in old if name in new and old[name] != new[name]}
    return {**changed, **gone, **come}


def _files(side: Side) -> dict[str, Any]:
    """Return what the files beside the pathways say, remarks and line ends apart."""
    from chamberwise.engine.reading.nodes import plain
    from chamberwise.engine.reading.tree import parse

    found = {}
    for name, text in _texts(side).items():
        root = parse(text, name).root
        found[name] = plain(root) if root is not None else text
    return found


def _texts(side: Side) -> dict[str, str]:
    revision = as_revision(side.typed)
    if revision is not None:
        return {name: text for each in FOLDERS for name, text in texts_below(revision, each)}
    folder = Path(side.typed)
    paths = (path for each in FOLDERS for path in sorted((folder / each).rglob("*.yaml")))
    return {
        path.relative_to(folder).as_posix(): path.read_text(encoding="utf-8", errors="replace")
        for path in paths
    }


def _unused(side: Side) -> dict[str, Any]:
    """Return the shared words that no pathway of a library uses; rules bind all of them."""
    from chamberwise.engine.comparing.used import used_words

    library = side.loaded.library
    used = frozenset().union(*(used_words(library, name) for name in library.pathways))
    return {
        f"vocabulary / {table} / {name}": word
        for table in ("findings", "acts", "duties", "kit", "sources")
        for name, word in getattr(library.shared, table).items()
        if name not in used
    }
