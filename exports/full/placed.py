"""The round trip by geometry: each arrow leads where it should, each label is beside it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.full.content import FullPathway, Step, Way
from chamberwise.exports.full.exits import goes_next, is_labelled
from chamberwise.exports.language.values import told
from chamberwise.exports.paper.sheet import Arrow, Code, Outline, Page, Role, Shape, Text

NEAR = 0.06
"""Millimetres by which two things that touch may miss each other."""


@dataclass(frozen=True, slots=True)
class _Found:
    """What bears names of one pathway, by name, with the page it stands on."""

    shapes: dict[str, list[tuple[int, Shape]]]
    arrows: dict[str, list[tuple[int, Arrow]]]
    texts: dict[str, list[tuple[int, Text]]]


def placed_differences(content: FullPathway, pages: Sequence[Page]) -> tuple[str, ...]:
    """Return each step, answer or arrow that is missing, misplaced or too many."""
    found = _found(pages, content.id + "/")
    told = []
    for step in content.steps:
        told += [
            _("step {number}: {each}").format(number=step.number, each=each)
            for each in _of_step(found, content, step)
        ]
    told += _surplus(found, content)
    return tuple(told)


def _found(pages: Sequence[Page], begins: str) -> _Found:
    found = _Found({}, {}, {})
    for number, page in enumerate(pages):
        for item in page.items:
            if isinstance(item, Code) or not item.of.startswith(begins):
                continue
            if isinstance(item, Shape):
                found.shapes.setdefault(item.of, []).append((number, item))
            elif isinstance(item, Arrow):
                found.arrows.setdefault(item.of, []).append((number, item))
            else:
                found.texts.setdefault(item.of, []).append((number, item))
    return found


def _of_step(found: _Found, content: FullPathway, step: Step) -> Iterator[str]:
    symbols = found.shapes.get(step.of, [])
    if not symbols:
        yield _("its symbol is missing.")
        return
    page, symbol = symbols[0]
    numbers = [
        text
        for at, text in found.texts.get(step.of, [])
        if text.role is Role.NUMBER and at == page and _inside(text, symbol)
    ]
    if [text.text for text in numbers] != [str(step.number)]:
        yield _("its number does not stand in its symbol.")
    for way in step.ways:
        yield from _of_way(found, content, step, way)


def _of_way(found: _Found, content: FullPathway, step: Step, way: Way) -> Iterator[str]:
    name = f"{step.of}/{way.id}"
    told = _("the way “{label}”").format(label=way.label)
    arrows = found.arrows.get(name, [])
    labels = [each for each in found.texts.get(name, []) if each[1].role is Role.ANSWER]
    if len(arrows) != 1:
        yield _("{told} has {count} arrows.").format(told=told, count=len(arrows))
        return
    page, arrow = arrows[0]
    is_row = bool(found.shapes.get(name))
    if is_row or is_labelled(way):
        if [text.text for _where, text in labels] != [way.label]:
            yield _("{told} bears another label.").format(told=told)
        elif not _is_beside(found.texts[name], page, arrow):
            yield _("{told}: its label is not beside its arrow.").format(told=told)
    leads = _leads_to_circle if is_row else _leads_down
    if not leads(found, content, step, way, page, arrow):
        yield _("{told} does not lead to {to}.").format(told=told, to=way.to)


def _leads_to_circle(
    found: _Found, content: FullPathway, step: Step, way: Way, page: int, arrow: Arrow
) -> bool:
    name = f"{step.of}/{way.id}"
    rings = [ring for at, ring in found.shapes[name] if at == page]
    numbers = [text for at, text in found.texts[name] if text.role is Role.NUMBER and at == page]
    if len(rings) != 1 or len(numbers) != 1:
        return False
    ring, number, (x, y) = rings[0], numbers[0], arrow.points[-1]
    touches = abs(x - ring.x) <= NEAR and abs(y - ring.y - ring.height / 2) <= NEAR
    is_ring = ring.outline is Outline.CONNECTOR and arrow.has_head
    return is_ring and touches and _inside(number, ring) and number.text == str(way.to)


def _leads_down(
    found: _Found, content: FullPathway, step: Step, way: Way, page: int, arrow: Arrow
) -> bool:
    """Either the arrow itself goes down, or it is a tick that joins one that does."""
    if not goes_next(step, way):
        return False
    trunks = [
        trunk
        for each in step.ways
        for at, trunk in found.arrows.get(f"{step.of}/{each.id}", [])
        if at == page and trunk.has_head and trunk.points[0][0] == trunk.points[-1][0]
    ]
    if len(trunks) != 1 or not (arrow == trunks[0] or _joins(arrow, trunks[0])):
        return False
    x, y = trunks[0].points[-1]
    target = content.steps[way.to - 1].of
    symbols = [shape for at, shape in found.shapes.get(target, []) if at == page]
    return any(
        shape.x < x < shape.x + shape.width and abs(y - shape.y) <= NEAR for shape in symbols
    )


def _joins(tick: Arrow, trunk: Arrow) -> bool:
    x, y = tick.points[-1]
    (trunk_x, top), (_top_x, bottom) = trunk.points[0], trunk.points[-1]
    return abs(x - trunk_x) <= NEAR and top - NEAR <= y <= bottom


def _inside(text: Text, shape: Shape) -> bool:
    x, y = text.x + text.width / 2, text.y + text.height / 2
    return shape.x < x < shape.x + shape.width and shape.y < y < shape.y + shape.height


def _is_beside(texts: Sequence[tuple[int, Text]], page: int, arrow: Arrow) -> bool:
    """Label and sign stand on the page of their arrow, at its height, outside of it."""
    words = [text for at, text in texts if at == page and text.role in (Role.ANSWER, Role.NOTE)]
    (x, y), (end_x, end_y) = arrow.points[0], arrow.points[-1]
    if x == end_x:
        return any(y - NEAR <= text.y and text.y + text.height <= end_y + NEAR for text in words)
    before = [text for text in words if (text.x + text.width <= x) == (x < end_x)]
    if not before:
        return False
    top = min(text.y for text in before)
    bottom = max(text.y + text.height for text in before)
    return top - NEAR <= y <= bottom + NEAR


def _surplus(found: _Found, content: FullPathway) -> Iterator[str]:
    ways = {f"{step.of}/{way.id}" for step in content.steps for way in step.ways}
    steps = {step.of for step in content.steps}
    for kind, names in (("arrow", found.arrows), ("symbol", found.shapes), ("text", found.texts)):
        for name in names:
            if name not in ways and name not in steps:
                yield _("{name}: an {kind} that is not of the pathway.").format(
                    name=name, kind=told(kind)
                )
