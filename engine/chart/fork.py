"""What a silent fork is decided by, in words."""

from __future__ import annotations

from chamberwise.engine.chart.labels import lowered
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Branch, PathwayId


def fork_words(library: Library, pathway: PathwayId, fork: Branch) -> str:
    """Return which findings decide at a branch, by their titles."""
    findings = library.words(pathway).findings
    names = dict.fromkeys(name for row in fork.rows for name, _ in row.when.terms)
    return "Decide by: " + ", ".join(lowered(findings[name].title for name in names))
