"""An order for the full pathway, carried out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from unicodedata import bidirectional

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.frame import Body, Frame
from chamberwise.exports.flow.far import far_of
from chamberwise.exports.full.block import NOTHING, Blocks, Told
from chamberwise.exports.full.content import FullPathway
from chamberwise.exports.full.exits import page_word
from chamberwise.exports.full.extract import full_pathway
from chamberwise.exports.full.flow import ANY, LANE, Flow, column_count
from chamberwise.exports.full.front import KEY, choices, head, sources
from chamberwise.exports.full.map import collect_map, map_legend, map_shelves, map_title
from chamberwise.exports.full.piece import Collecting, Setter
from chamberwise.exports.full.safety import safety_notes, safety_panels, safety_title
from chamberwise.exports.full.words import content_texts
from chamberwise.exports.language.values import paper_told
from chamberwise.exports.legibility.angle import size_for
from chamberwise.exports.paper.sheet import Item, Page
from chamberwise.exports.paper.sizes import larger
from chamberwise.exports.printing.letters import RIGHT_TO_LEFT
from chamberwise.exports.printing.order import Made, Order, UnfitError
from chamberwise.exports.typesetting.measuring import Ruler

BODY_SIZE = 10.0
NARROWEST, LOWEST = 88.0, 76.0
"""Room for a column in millimetres at body type 10: some 40 letters a line, and a few lines."""
LEAST_NOTES = 40.0
"""Room below the heading of the safety notes; with less they begin on the next page."""
MOST_SYMBOLS = 50
"""Symbols on a page of the map: more boxes can hardly be followed."""
FEW_COLUMNS = 3
"""On larger paper a page of steps holds more symbols than that, and so may the map."""
REACH = 12
"""Steps back, of which a page may have told a caution that is met again."""

NO_MAP = N_("The map is left out: it does not fit on one page in letters that can be read.")


def make(order: Order) -> Made:
    """Return the pages, or raise `UnfitError`."""
    content = full_pathway(order.library, order.pathway)
    return make_from(content, order)


def make_from(content: FullPathway, order: Order) -> Made:
    """Return the pages of content that is at hand."""
    _check_direction(content)
    size = max(BODY_SIZE, size_for(order.distance) if order.distance else BODY_SIZE)
    scale = size / BODY_SIZE
    most = max((step.number for step in content.steps), default=0)
    holds = _steps_told([most, most + 1])
    frame = Frame(order.ruler, order.control, order.sized.format, holds)
    body = frame.body
    _check_room(body, scale, order)
    collector = Collecting()
    _placed(content, body, Setter(collector, scale), is_drawn=False)
    order.ruler.measure(collector.known)
    flow, told = _placed(content, body, Setter(order.ruler, scale), is_drawn=True)
    return Made(_pages(flow, frame, order.ruler, size), told)


def _placed(
    content: FullPathway, body: Body, setter: Setter, *, is_drawn: bool
) -> tuple[Flow, tuple[str, ...]]:
    columns = column_count(body.width, setter.scale)
    width = (body.width - (columns - 1) * setter.mm(LANE)) / columns
    blocks = Blocks(setter, width)
    if not is_drawn:
        return _collected(content, blocks, body), ()
    flow = Flow(body, blocks)
    flow.wide(head(setter, content, body.width), setter.mm(6.0))
    _safety(flow, content, columns)
    told = _map(flow, content)
    flow.steps(content)
    for listed in (choices, sources):
        flow.plain(listed(setter, content, width), setter.mm(1.4))
    return flow, told


def _safety(flow: Flow, content: FullPathway, columns: int) -> None:
    setter, width = flow.blocks.setter, flow.blocks.width
    notes = safety_notes(setter, content, width)
    if notes:
        title = safety_title(setter, flow.body.width)
        if flow.left < title.height + setter.mm(LEAST_NOTES):
            flow.break_page()
        flow.wide(title, setter.mm(2.6))
    while notes:
        panels, count = safety_panels(setter, notes, width, columns, flow.left)
        if not count:
            if flow.is_fresh:
                panels, count = notes[0], 1
            else:
                flow.break_page()
                continue
        flow.check(_("The safety notes"), panels)
        flow.wide(panels, setter.mm(7.0))
        notes = notes[count:]


def _map(flow: Flow, content: FullPathway) -> tuple[str, ...]:
    """Set the map in rows, with no more symbols on a page than can be followed."""
    setter, width = flow.blocks.setter, flow.body.width
    shelves = map_shelves(setter, content, width, flow.body.height)
    if not shelves:
        return (_(NO_MAP),)
    title, legend = map_title(setter, width), map_legend(setter, width)
    if flow.left < title.height + shelves[0].piece.height + setter.mm(12.0):
        flow.break_page()
    flow.wide(title, setter.mm(3.0))
    columns = column_count(width, setter.scale)
    most = MOST_SYMBOLS if columns <= FEW_COLUMNS else ANY
    page, symbols = flow.page, len(KEY) if flow.page == 1 else 0
    for place, shelf in enumerate(shelves):
        is_last = place == len(shelves) - 1
        follows = legend.height + setter.mm(3.0) if is_last else 0.0
        is_full = flow.left < shelf.piece.height + follows
        if is_full or (flow.page == page and symbols + shelf.symbols > most):
            flow.break_page()
        symbols = shelf.symbols + (symbols if flow.page == page else 0)
        page = flow.page
        flow.wide(shelf.piece, setter.mm(3.4))
    flow.wide(legend, setter.mm(7.0))
    if columns <= FEW_COLUMNS:
        flow.symbols_left[flow.page] = most - symbols
    return ()


def _collected(content: FullPathway, blocks: Blocks, body: Body) -> Flow:
    """Ask for every text once, so that all are measured together."""
    setter = blocks.setter
    flow = Flow(body, blocks)
    head(setter, content, body.width)
    for wide in (safety_title, map_title, map_legend):
        wide(setter, body.width)
    collect_map(setter, content)
    for narrow in (safety_notes, choices, sources):
        narrow(setter, content, blocks.width)
    for place, step in enumerate(content.steps):
        flow.leading(content, place)
        for told in (NOTHING, *_earlier(content, place)):
            for is_down in (True, False):
                blocks.block(step, is_down=is_down, told=told)
    return flow


def _earlier(content: FullPathway, place: int) -> Iterator[Told]:
    """Yield what a page may have told already: the cautions of a few steps before."""
    own = {each.anywhere for each in content.steps[place].cautions}
    for step in content.steps[max(0, place - REACH) : place]:
        met = {each.anywhere: step.number for each in step.cautions if each.anywhere in own}
        if met:
            yield Told({}, met)


def _pages(flow: Flow, frame: Frame, ruler: Ruler, size: float) -> tuple[Page, ...]:
    count = max(put.page for put in flow.puts)
    far = far_of(size)
    drawn: dict[int, list[Item]] = {number: [] for number in range(1, count + 1)}
    _measure_page_words(flow, count, ruler)
    for put in flow.puts:
        drawn[put.page] += put.drawn(flow.pages)
    steps: dict[int, list[int]] = {}
    for step, page in flow.pages.items():
        steps.setdefault(page, []).append(step)
    return tuple(
        frame.page(tuple(items), number, count, far, _steps_told(steps.get(number, [])))
        for number, items in drawn.items()
    )


def _steps_told(numbers: Sequence[int]) -> str:
    """Return which steps begin on a page, as somebody looks for them who leafs through."""
    if not numbers:
        return ""
    first, last = min(numbers), max(numbers)
    if first == last:
        return _("Step {number}").format(number=first)
    return _("Steps {first} to {last}").format(first=first, last=last)


def _measure_page_words(flow: Flow, count: int, ruler: Ruler) -> None:
    shadow = Collecting()
    for number in range(1, count + 1):
        page_word(Setter(shadow, flow.blocks.setter.scale), number, "")
    ruler.measure(shadow.known)


def _check_room(body: Body, scale: float, order: Order) -> None:
    """Type for a great distance may leave room for hardly a word."""
    if body.width >= NARROWEST * scale and body.height >= LOWEST * scale:
        return
    bigger = larger(order.sized.paper)
    raise UnfitError(
        _(
            "Type to be read from {distance}\u00a0m leaves too few letters a line on {sized}."
        ).format(distance=decimal(f"{order.distance}"), sized=paper_told(order.sized)),
        (
            *((_("Larger paper: {bigger} or more.").format(bigger=bigger),) if bigger else ()),
            _("A shorter reading distance; without one it is set for the hand."),
            _("The wall chart, which says less in larger type."),
        ),
    )


def _check_direction(content: FullPathway) -> None:
    for where, text in content_texts(content):
        letter = next((each for each in text if bidirectional(each) in RIGHT_TO_LEFT), "")
        if letter:
            raise UnfitError(
                _(
                    "{where}: “{letter}” belongs to a script that runs from right to left, which "
                    "is not printed yet."
                ).format(where=where, letter=letter),
                (_("Write the pathway in a script that runs from left to right."),),
            )
