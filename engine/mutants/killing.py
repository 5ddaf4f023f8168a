"""Whether a mutant is told from the original: by a check, or by a rule on some walk."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from enum import Enum
from typing import TypeAlias

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Rule, RuleId
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.mutants.by_checks import (
    Finding,
    entries,
    found_by_form,
    found_by_knowledge,
)
from chamberwise.engine.mutants.hunting import hunted
from chamberwise.engine.mutants.mutant import Mutant
from chamberwise.engine.mutants.nearing import edited_places
from chamberwise.engine.mutants.sameness import Walked, is_same, walked
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.rules import rules_for
from chamberwise.engine.proof.standing import Standing
from chamberwise.engine.proof.verdict import Violated
from chamberwise.engine.reading.library import Loaded

Broken: TypeAlias = frozenset[tuple[PathwayId, RuleId]]
"""Rules that some walk from the entry of a pathway breaks."""


class Effort(Enum):
    """How many moves are made in search of a walk that breaks a rule; in the end all there are."""

    GLANCE = (8_000,)
    PROOF = (8_000, None)


@dataclass(frozen=True, slots=True)
class Bench:
    """An original with all that is already found in it, which therefore tells nothing."""

    loaded: Loaded
    pathway: PathwayId
    found: frozenset[Finding]
    broken: Broken
    walks: dict[PathwayId, Walked] = field(default_factory=dict, compare=False)
    """The original's walks, by entry, as far as they were looked at."""
    proved: dict[PathwayId, Standing] = field(default_factory=dict, compare=False)
    """What was covered in proving the original, by entry, as far as that was asked for."""


def bench_for(loaded: Loaded, pathway: PathwayId, broken: Broken) -> Bench:
    """Return what the mutants of a pathway are held against."""
    found = {*found_by_form(loaded, pathway), *found_by_knowledge(loaded, pathway)}
    return Bench(loaded, pathway, frozenset(found), broken)


def broken_already(library: Library, pathway: PathwayId) -> Broken:
    """Return the rules that walks through a pathway break as it is, by proof."""
    return frozenset(
        (name, verdict.rule.id)
        for name in entries(library, pathway)
        for verdict in prove(library, name).verdicts
        if isinstance(verdict, Violated)
    )


def killed_by(bench: Bench, mutant: Mutant, effort: Effort = Effort.PROOF) -> str | None:
    """Return the slug of the check or the id of the rule that tells a mutant; `None`: it survives.

    What costs least is tried first, and the first that tells it has it.
    """
    loaded = replace(bench.loaded, library=mutant.within(bench.loaded.library))
    return next(_killers(bench, loaded, mutant.id, effort), None)


def looks_the_same(bench: Bench, mutant: Mutant) -> bool:
    """Whether no team could tell the mutant from the original, from whatever entry."""
    original = bench.loaded.library
    edited = mutant.within(original)
    for name in entries(original, bench.pathway):
        if name not in bench.walks:
            bench.walks[name] = walked(original, name)
        if not is_same(bench.walks[name], walked(edited, name)):
            return False
    return True


def _killers(bench: Bench, loaded: Loaded, seed: str, effort: Effort) -> Iterator[str]:
    yield from _new(bench, found_by_form(loaded, bench.pathway))
    first, *more = effort.value
    yield from _broken(bench, loaded.library, seed, first)
    yield from _new(bench, found_by_knowledge(loaded, bench.pathway))
    for moves in more:
        yield from _broken(bench, loaded.library, seed, moves)


def _new(bench: Bench, found: Iterable[Finding]) -> Iterator[str]:
    return (finding[1] for finding in found if finding not in bench.found)


def _broken(bench: Bench, library: Library, seed: str, moves: int | None) -> Iterator[RuleId]:
    """Yield rules that the mutant breaks, after so many moves or by proof."""
    near = edited_places(bench.loaded.library, library)
    for name in entries(library, bench.pathway):
        rules = _rules(bench, library, name)
        if moves is None:
            standing = _standing(bench, name)
            proof = prove(library, name, rules, stop_at_first=True, standing=standing)
            yield from (each.rule.id for each in proof.verdicts if isinstance(each, Violated))
        elif rule := hunted(library, name, rules, near, seed, moves):
            yield rule.id


def _standing(bench: Bench, name: PathwayId) -> Standing:
    """Return what stands of the original's proof."""
    if name not in bench.proved:
        standing = bench.proved[name] = Standing()
        library = bench.loaded.library
        prove(library, name, _rules(bench, library, name), standing=standing)
    return bench.proved[name].aside()


def _rules(bench: Bench, library: Library, name: PathwayId) -> tuple[Rule, ...]:
    return tuple(each for each in rules_for(library, name) if (name, each.id) not in bench.broken)
