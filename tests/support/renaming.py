"""A library in which one name is another wherever it stands, written into the text of its files.

The places come from `checks.references` and `graph.targets`, by which `check` finds a name that is
not defined: they owe nothing to what a comparison knows of names.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from chamberwise.engine.checks.references import Of, of_words, references
from chamberwise.engine.diagnostics.problem import Pointer, Span
from chamberwise.engine.graph.targets import all_targets
from chamberwise.engine.model.step import Handover, Outcome
from chamberwise.engine.model.words import Words
from chamberwise.engine.reading.library import File, Loaded, assemble, read_text
from chamberwise.engine.reading.nodes import node_at
from chamberwise.engine.reading.tree import Scalar, Table

KINDS: Mapping[str, tuple[Of, ...]] = {
    "findings": (Of.FINDING, Of.CHOICE),
    "choices": (Of.FINDING, Of.CHOICE),
    "acts": (Of.ACT,),
    "duties": (Of.DUTY,),
    "kit": (Of.KIT,),
    "sources": (Of.SOURCE,),
    "phases": (Of.PHASE,),
    "rules": (),
}


class Id(NamedTuple):
    """One name: the file that defines it, the place of its key there, and the name."""

    file: str
    at: Pointer

    @property
    def name(self) -> str:
        return str(self.at[-1])

    @property
    def sort(self) -> str:
        """Return what it is the name of: two of one sort could be exchanged."""
        if len(self.at) > 2:
            return "/".join((self.file, *map(str, self.at[:-1])))
        return f"{self.file}/{self.at[0]}" if self.at[0] in ("steps", "phases") else str(self.at[0])


def every_id(loaded: Loaded) -> Iterator[Id]:
    """Yield every name that a library defines."""
    for file in loaded.files.values():
        for table in (*KINDS, "steps"):
            node = node_at(file.tree.root, (table,))
            for name in node.entries if isinstance(node, Table) else ():
                yield Id(file.shown_as, (table, name))
                for inside in ("values", "positions", "answers"):
                    below = node_at(file.tree.root, (table, name, inside))
                    for each in below.entries if isinstance(below, Table) else ():
                        if table != "steps" or _has_means(file, name, each):
                            yield Id(file.shown_as, (table, name, inside, each))


def _has_means(file: File, step: str, answer: str) -> bool:
    """Whether an answer has a name of its own, and not that of its value."""
    return " " not in answer and (
        node_at(file.tree.root, ("steps", step, "answers", answer, "means")) is not None
    )


def renamed(loaded: Loaded, names: Mapping[Id, str]) -> Loaded:
    """Return the library read anew with some names exchanged everywhere."""
    edits: dict[str, dict[Span, str]] = {name: {} for name in loaded.files}
    for each, now in names.items():
        for file, span in _places(loaded, each):
            edits[file][span] = now
    files = [
        _edited(file, edits[name], names) if edits[name] else file
        for name, file in loaded.files.items()
    ]
    made = assemble(files)
    assert all(file.is_whole for file in made.files.values())
    return made


def _edited(file: File, edits: Mapping[Span, str], names: Mapping[Id, str]) -> File:
    lines = file.text.splitlines(keepends=True)
    for span, now in sorted(edits.items(), reverse=True):
        line = lines[span.line - 1]
        lines[span.line - 1] = line[: span.column - 1] + now + line[span.end_column - 1 :]
    text = "".join(lines)
    for each, now in names.items():
        if each.file == file.shown_as:
            *above, _name = each.at
            for end in ("\n", " /"):
                was = " / ".join(map(str, each.at)) + end
                text = text.replace(
                    f"at: {was}", "at: " + " / ".join((*map(str, above), now)) + end
                )
    return read_text(text, file.shown_as)


def _places(loaded: Loaded, each: Id) -> Iterator[tuple[str, Span]]:
    yield each.file, _key(loaded.files[each.file], each.at)
    table = each.at[0]
    if len(each.at) == 4:
        if table != "steps":
            yield from _uses(loaded, each, (Of.FINDING,), value_of=str(each.at[1]))
    elif table == "steps":
        yield from _of_step(loaded, each)
    else:
        yield from _uses(loaded, each, KINDS[str(table)])


def _uses(
    loaded: Loaded, each: Id, kinds: tuple[Of, ...], value_of: str | None = None
) -> Iterator[tuple[str, Span]]:
    is_own = loaded.files[each.file].pathway is not None
    for file in loaded.files.values():
        if is_own and file.shown_as != each.file:
            continue
        for use in references(file.pathway) if file.pathway else of_words(file.words or Words()):
            if use.of in kinds and use.name == each.name and use.value_of == value_of:
                yield file.shown_as, _span(file, use.pointer, use.name)


def _of_step(loaded: Loaded, each: Id) -> Iterator[tuple[str, Span]]:
    file, name = loaded.files[each.file], each.name
    assert file.pathway is not None
    own = file.pathway
    places: list[Pointer] = [("start",)] if own.start == name else []
    places += [target.pointer for _step, target in all_targets(own) if target.step == name]
    if own.wall_chart:
        for key, listed in (("first", own.wall_chart.first), ("then", own.wall_chart.spine)):
            places += [("wall chart", key, at) for at, step in enumerate(listed) if step == name]
    for place in places:
        yield each.file, _span(file, place, name)
    yield from _comes_back(loaded, own.id, name)
    yield from _uses(loaded, each, (Of.OUTCOME,))
    for other in loaded.vocabulary:
        for use in of_words(other.words) if other.words else ():
            if use.of is Of.OUTCOME and use.name == name:
                yield other.shown_as, _span(other, use.pointer, name)


def _comes_back(loaded: Loaded, pathway: str, outcome: str) -> Iterator[tuple[str, Span]]:
    for other in loaded.files.values():
        for step in other.pathway.steps.values() if other.pathway else ():
            if isinstance(step, Handover) and (step.to, outcome) in _returns(step):
                yield other.shown_as, _key(other, ("steps", step.id, "on return", outcome))


def _returns(step: Handover) -> set[tuple[str, str]]:
    return {(step.to, outcome) for outcome, _back in step.on_return}


def _span(file: File, pointer: Pointer, name: str) -> Span:
    """Return where a name stands: as a value, as the only one of a list or of a happening, or as

    a key.
    """
    for length in range(len(pointer), len(pointer) - 3, -1):
        node = node_at(file.tree.root, pointer[:length])
        if isinstance(node, Scalar) and node.text == name and pointer[-1] != name:
            return node.span
    return _key(file, pointer)


def _key(file: File, pointer: Pointer) -> Span:
    above = node_at(file.tree.root, pointer[:-1])
    assert isinstance(above, Table), pointer
    return above.entries[str(pointer[-1])].key.span


def outcomes_of_one_name(loaded: Loaded) -> frozenset[str]:
    """Return the names that outcomes of several pathways bear: rules cannot tell those apart."""
    met: set[str] = set()
    found: set[str] = set()
    for pathway in loaded.library.pathways.values():
        outcomes = {name for name, each in pathway.steps.items() if isinstance(each, Outcome)}
        found |= met & outcomes
        met |= outcomes
    return frozenset(found)
