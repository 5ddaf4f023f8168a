"""The digest of what a pathway says: its file, those it hands over to, and the shared words."""

from __future__ import annotations

from collections.abc import Iterable
from hashlib import sha256
from typing import TYPE_CHECKING

from chamberwise.engine.graph.handovers import hands_over_to
from chamberwise.engine.model.library import Library

if TYPE_CHECKING:
    from chamberwise.engine.reading.library import Loaded


def reached_by_handover(library: Library, pathway: str) -> tuple[str, ...]:
    """Return a pathway's name and those it can hand over to, in the order met."""
    found = [pathway]
    for name in found:
        found += [to for to in hands_over_to(library, name) if to not in found]
    return tuple(found)


def that_reach(library: Library, pathways: Iterable[str]) -> tuple[str, ...]:
    """Return the other pathways whose walks can come into some, in the order of the library."""
    asked = set(pathways)
    return tuple(
        name
        for name in library.pathways
        if name not in asked and not asked.isdisjoint(reached_by_handover(library, name))
    )


def digest(loaded: Loaded, pathway: str) -> str:
    """Return the SHA-256 of everything a walk over a pathway can show, in hexadecimal."""
    content = sha256()
    names = [name for name, file in loaded.files.items() if file.words is not None]
    if loaded.library.local_to(pathway):
        names.append(loaded.sheet)
    names += [loaded.file_of[name] for name in reached_by_handover(loaded.library, pathway)]
    for name in names:
        text = loaded.files[name].text.replace("\r\n", "\n")
        content.update(f"{len(text)}\n{text}".encode())
    return content.hexdigest()
