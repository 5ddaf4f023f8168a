"""What a silent fork is decided by, in words."""

from __future__ import annotations

from chamberwise.engine.chart.labels import lowered
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Branch, PathwayId


def fork_words(library: Library, pathway: PathwayId, fork: Branch) -> str:
    """Return which findings decide at a branch, by their titles."""
    findings = library.words(pathway).findings
    names = dict.fromkeys(name for row in fork.rows for name, _values in row.when.terms)
    listed = ", ".join(lowered(findings[name].title for name in names))
    return _("Decide by: {findings}").format(findings=listed)
