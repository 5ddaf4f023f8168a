"""A place as it is typed in an acceptance, with the names in it as things are called now."""

from __future__ import annotations

from chamberwise.engine.comparing.names.named import TABLES, Calls, Sort
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Question

_SORTS = {table: sort for sort, table in TABLES.items()} | {
    "steps": Sort.STEP,
    "phases": Sort.PHASE,
    "choices": Sort.FINDING,
}
_SEPARATOR = " / "


def place_called(typed: str, pathway: Pathway, calls: Calls) -> str:
    """Return a place such as `steps / fill-chamber / do / 1` under the names of now."""
    table, *rest = typed.split(_SEPARATOR)
    if not rest or table not in _SORTS:
        return typed
    name, *inside = rest
    if inside[:1] in (["values"], ["positions"]) and len(inside) > 1:
        inside[1] = calls.now(Sort.VALUE, inside[1], name)
    step = pathway.steps.get(name) if table == "steps" else None
    if isinstance(step, Question) and inside[:1] == ["answers"] and len(inside) > 1:
        named = next((each for each in step.answers if each.id == inside[1]), None)
        is_value = named is not None and named.means == (named.id,)
        sort, of = (Sort.VALUE, step.ask) if is_value else (Sort.ANSWER, step.id)
        inside[1] = calls.now(sort, inside[1], of)
    return _SEPARATOR.join((table, calls.now(_SORTS[table], name), *inside))
