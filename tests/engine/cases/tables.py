"""Random libraries with a table of cases, some findings of them choices left to the unit."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import CaseTable
from chamberwise.engine.model.words import Choice, Finding
from hypothesis import strategies as st
from hypothesis.strategies import SearchStrategy

from tests.support.build import changed, library
from tests.support.strategies import libraries

ENTRY = "p0"


def tables(*, with_choices: bool = True) -> SearchStrategy[Library]:
    """Draw libraries in which the entry has a table over two findings and assumes most others."""
    return st.builds(_with_table, libraries(), st.booleans() if with_choices else st.just(False))


def _with_table(drawn: Library, a_choice: bool) -> Library:
    shared = [_as_choice(each) if a_choice else each for each in drawn.shared.findings.values()]
    first = drawn.pathways[ENTRY]
    names = [name for name in drawn.words(ENTRY).findings if name not in ("a", "b")]
    table = CaseTable(
        ("a", "b"),
        assume=tuple((name, _first(drawn, name)) for name in names[:-1] if not a_choice),
        asked_again=(("a", _first(drawn, "a")), ("b", "b2")),
    )
    steps = {
        name: changed(step, plan=((f"column{number % 2}", name),)) if number % 3 == 0 else step
        for number, (name, step) in enumerate(first.steps.items())
    }
    planned = replace(first, steps=steps, cases=table)
    others = [each for name, each in drawn.pathways.items() if name != ENTRY]
    return library(planned, *others, findings=shared, acts=drawn.shared.acts.values())


def _first(drawn: Library, name: str) -> str:
    return drawn.finding(ENTRY, name).values[0].id


def _as_choice(finding: Finding) -> Finding:
    if finding.id in ("a", "b"):
        return finding
    suggested = finding.values[-1].id if len(finding.values) % 2 else None
    return replace(finding, choice=Choice(suggested, "because", None))
