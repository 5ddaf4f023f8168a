"""What a condition means of incomplete knowledge: surely true, or possibly true. Never bare."""

from __future__ import annotations

from chamberwise.engine.meaning.layout import Layout
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.step import PathwayId


def surely(condition: Condition, possible: int, layout: Layout, pathway: PathwayId) -> bool:
    """Whether every value still possible, of every finding named, satisfies the condition."""
    for name, values in condition.terms:
        field = layout.field(pathway, name)
        if possible & field.every & ~field.mask(values):
            return False
    return True


def possibly(condition: Condition, possible: int, layout: Layout, pathway: PathwayId) -> bool:
    """Whether, of every finding named, some value still possible satisfies the condition."""
    for name, values in condition.terms:
        field = layout.field(pathway, name)
        if not possible & field.mask(values):
            return False
    return True
