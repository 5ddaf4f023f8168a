"""Every text of the pathways and the vocabulary, with its place and the sources beside it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

import yaml

from tests.conformance.driver import FOLDER

Tree = dict[str, "Tree"] | list["Tree"] | str


@dataclass(frozen=True)
class Text:
    """A text at a place such as `steps / hold-still / why`, in one file."""

    file: str
    place: tuple[str, ...]
    text: str
    sources: tuple[str, ...]
    """The sources of the smallest thing around it that names any."""

    @property
    def key(self) -> str:
        return next((name for name in reversed(self.place) if not name.isdigit()), "")


@lru_cache(maxsize=1)
def texts() -> tuple[Text, ...]:
    """Return every text of every file, in order."""
    files = sorted((*FOLDER.glob("*.yaml"), *FOLDER.glob("vocabulary/*.yaml")))
    return tuple(
        text
        for path in files
        for text in _below(yaml.load(path.read_bytes(), yaml.BaseLoader), path.stem, (), ())
    )


def _below(
    tree: Tree, file: str, place: tuple[str, ...], sources: tuple[str, ...]
) -> Iterator[Text]:
    if isinstance(tree, str):
        yield Text(file, place, tree, sources)
        return
    if isinstance(tree, dict):
        named = tree.get("sources")
        here = tuple(map(str, named)) if isinstance(named, list) else sources
        for name, below in tree.items():
            yield from _below(below, file, (*place, name), here)
        return
    for number, below in enumerate(tree):
        yield from _below(below, file, (*place, str(number)), sources)
