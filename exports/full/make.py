"""An order for the full pathway, carried out."""

from __future__ import annotations

from unicodedata import bidirectional

from chamberwise.exports.control.frame import Body, Frame
from chamberwise.exports.full.block import Blocks
from chamberwise.exports.full.content import FullPathway
from chamberwise.exports.full.exits import page_word
from chamberwise.exports.full.extract import full_pathway
from chamberwise.exports.full.flow import LANE, Flow, column_count
from chamberwise.exports.full.front import head, safety, sources
from chamberwise.exports.full.map import map_piece
from chamberwise.exports.full.piece import Collecting, Setter
from chamberwise.exports.full.words import content_texts
from chamberwise.exports.legibility.angle import read_from, size_for
from chamberwise.exports.paper.sheet import Item, Page
from chamberwise.exports.paper.sizes import larger
from chamberwise.exports.printing.letters import RIGHT_TO_LEFT
from chamberwise.exports.printing.order import Made, Order, UnfitError
from chamberwise.exports.typesetting.measuring import Ruler

BODY_SIZE = 10.0
NARROWEST, LOWEST = 88.0, 76.0
"""Room for a column in millimetres at body type 10: some 40 letters a line, and a few lines."""
LEAST_LEFT = 0.45
"""Of a page: with less than this left on the first one, the steps begin on the next."""


NO_MAP = "The map is left out: it does not fit on one page in letters that can be read."


def make(order: Order) -> Made:
    """Return the pages, or raise `UnfitError`."""
    content = full_pathway(order.library, order.pathway)
    return make_from(content, order)


def make_from(content: FullPathway, order: Order) -> Made:
    """Return the pages of content that is at hand."""
    _check_direction(content)
    size = max(BODY_SIZE, size_for(order.distance) if order.distance else BODY_SIZE)
    scale = size / BODY_SIZE
    frame = Frame(order.ruler, order.control, order.sized.format)
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
    top = head(setter, content, body.width)
    flow = Flow(body, blocks)
    flow.wide(top, setter.mm(6.0))
    piece = map_piece(setter, content, body.width, body.bottom - flow.y, body.height)
    is_on_first = piece is not None and piece.height <= body.bottom - flow.y
    if piece and is_on_first:
        flow.wide(piece, setter.mm(8.0))
    flow.plain(safety(setter, content, width), setter.mm(2.6))
    if piece and not is_on_first:
        flow.break_page()
        flow.wide(piece, setter.mm(8.0))
    told = () if piece else (NO_MAP,)
    if columns > 1 or body.bottom - flow.y < LEAST_LEFT * body.height:
        flow.break_page()
    flow.steps(content)
    flow.plain(sources(setter, content, width), setter.mm(1.4))
    return flow, told


def _collected(content: FullPathway, blocks: Blocks, body: Body) -> Flow:
    """Ask for every text once, so that all are measured together."""
    setter = blocks.setter
    flow = Flow(body, blocks)
    head(setter, content, body.width)
    map_piece(setter, content, body.width, 0.0, 0.0)
    for wide in (safety, sources):
        wide(setter, content, blocks.width)
    for place, step in enumerate(content.steps):
        flow.leading(content, place)
        for is_down in (True, False):
            blocks.block(step, is_down=is_down, pages={})
    return flow


def _pages(flow: Flow, frame: Frame, ruler: Ruler, size: float) -> tuple[Page, ...]:
    count = max(put.page for put in flow.puts)
    far = f"Read from up to {read_from(size):.1f}\u00a0m."
    shadow = Collecting()
    for number in range(1, count + 1):
        Frame(shadow, frame.control, frame.format).page((), number, count, far)
    ruler.measure(shadow.known)
    drawn: dict[int, list[Item]] = {number: [] for number in range(1, count + 1)}
    _measure_page_words(flow, count, ruler)
    for put in flow.puts:
        drawn[put.page] += put.drawn(flow.pages)
    return tuple(frame.page(tuple(items), number, count, far) for number, items in drawn.items())


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
        f"Type to be read from {order.distance}\u00a0m leaves too few letters a line on "
        f"{order.sized}.",
        (
            *((f"Larger paper: {bigger} or more.",) if bigger else ()),
            "A shorter reading distance; without one it is set for the hand.",
            "The wall chart, which says less in larger type.",
        ),
    )


def _check_direction(content: FullPathway) -> None:
    for where, text in content_texts(content):
        letter = next((each for each in text if bidirectional(each) in RIGHT_TO_LEFT), "")
        if letter:
            raise UnfitError(
                f"{where}: “{letter}” belongs to a script that runs from right to left, "
                "which is not printed yet.",
                ("Write the pathway in a script that runs from left to right.",),
            )
