"""Coordinates by every way of laying out: fixed sizes, no overlap, the same each time."""

from __future__ import annotations

import subprocess
import sys
from itertools import combinations
from pathlib import Path

import pytest
from chamberwise.exports.layout import by_program, by_rows, by_wasm, coordinates
from chamberwise.exports.layout.content import (
    Graph,
    Layout,
    Link,
    Node,
    NoLayoutError,
    Placed,
    Route,
)
from chamberwise.exports.layout.dot_source import MOST_NODES
from chamberwise.exports.layout.json_reading import layout_from_json
from chamberwise.exports.layout.margins import spaced_coordinates
from chamberwise.exports.layout.tangles import tangled
from hypothesis import given, settings
from hypothesis import strategies as st

TOP = Path(__file__).resolve().parents[3]
WAYS = [by_wasm.lay_out, by_rows.lay_out]


@st.composite
def graphs(draw: st.DrawFn) -> Graph:
    count = draw(st.integers(1, 12))
    sizes = st.floats(4, 20)
    nodes = tuple(Node(f"n\\{each}", draw(sizes), draw(sizes)) for each in range(count))
    names = st.sampled_from([node.name for node in nodes])
    links = draw(st.lists(st.builds(Link, names, names), max_size=18))
    return Graph(nodes, tuple(links), draw(st.booleans()))


def check(graph: Graph, layout: Layout) -> None:
    assert [place.node for place in layout.placed] == list(graph.nodes)
    assert [route.link for route in layout.routes] == list(graph.links)
    for one, other in combinations(layout.placed, 2):
        assert (
            one.x + one.node.width <= other.x + 0.01
            or other.x + other.node.width <= one.x + 0.01
            or one.y + one.node.height <= other.y + 0.01
            or other.y + other.node.height <= one.y + 0.01
        )
    for place in layout.placed:
        assert -0.01 <= place.x <= layout.width - place.node.width + 0.01
        assert -0.01 <= place.y <= layout.height - place.node.height + 0.01


@pytest.mark.parametrize("lay_out", WAYS)
@given(graph=graphs())
@settings(max_examples=40, deadline=None)
def test_boxes_keep_their_size_and_never_overlap(lay_out: object, graph: Graph) -> None:
    assert callable(lay_out)
    layout = lay_out(graph)
    check(graph, layout)
    assert lay_out(graph) == layout


@pytest.mark.parametrize("lay_out", WAYS)
def test_an_arrow_begins_and_ends_at_its_boxes(lay_out: object) -> None:
    assert callable(lay_out)
    graph = Graph((Node("a", 10, 6), Node("b", 10, 6)), (Link("a", "b"),))
    ((_, points),) = lay_out(graph).routes
    assert points[0][1] == pytest.approx(6, abs=0.3)
    assert points[-1][1] == pytest.approx(10.5, abs=0.3)


def test_without_graphviz_it_is_laid_out_in_rows(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(_: Graph) -> Layout:
        raise NoLayoutError("not here")

    monkeypatch.setattr(by_wasm, "lay_out", refuse)
    monkeypatch.setattr(by_program, "lay_out", refuse)
    graph = Graph((Node("a", 10, 6),), ())
    assert coordinates.coordinates(graph).made_by == by_rows.MADE_BY


def test_graphviz_in_process_comes_first() -> None:
    assert coordinates.coordinates(Graph((Node("a", 9, 6),), ())).made_by == by_wasm.MADE_BY


def test_no_program_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PATH", "")
    with pytest.raises(NoLayoutError, match="no program dot"):
        by_program.lay_out(Graph((Node("a", 9, 6),), ()))


def test_too_large_a_graph_is_laid_out_in_rows() -> None:
    nodes = tuple(Node(str(each), 9, 6) for each in range(MOST_NODES + 1))
    links = (Link("0", "1"), Link("1", "2"))
    for lay_out in (by_wasm.lay_out, by_program.lay_out):
        with pytest.raises(NoLayoutError, match="too large"):
            lay_out(Graph(nodes, links))
    assert coordinates.coordinates(Graph(nodes, links)).made_by == by_rows.MADE_BY


def test_an_arrow_ends_at_the_tip_of_a_diamond() -> None:
    nodes = (Node("a", 10, 6), Node("b", 10, 10, True), Node("c", 10, 6))
    layout = by_wasm.lay_out(Graph(nodes, (Link("a", "b"), Link("b", "c")), is_across=True))
    _, diamond, _ = layout.placed
    into, out = (route.points for route in layout.routes)
    assert into[-1] == pytest.approx((diamond.x, diamond.y + 5), abs=0.3)
    assert out[0] == pytest.approx((diamond.x + 10, diamond.y + 5), abs=0.3)


def placed(name: str, x: float, y: float) -> Placed:
    return Placed(Node(name, 10, 10), x, y)


def test_arrows_that_cross_or_run_through_a_box_are_told() -> None:
    boxes = (placed("a", 0, 0), placed("b", 50, 0), placed("c", 100, 0), placed("d", 50, 40))
    free = Route(Link("a", "b"), ((10, 5), (50, 5)))
    through = Route(Link("a", "c"), ((10, 6), (100, 6)))
    down = Route(Link("b", "d"), ((60, 10), (60, 40)))
    level = Route(Link("d", "c"), ((50, 20), (110, 20)))
    assert tangled(Layout(110, 50, boxes, (free,), "")) == ()
    assert tangled(Layout(110, 50, boxes, (free, through), "")) == (through.link,)
    assert tangled(Layout(110, 50, boxes, (down, level), "")) == (down.link, level.link)


def test_arrows_that_only_meet_at_their_ends_are_free() -> None:
    boxes = (placed("a", 0, 0), placed("b", 50, 0), placed("c", 50, 40))
    one = Route(Link("a", "b"), ((10, 5), (50, 5)))
    other = Route(Link("a", "c"), ((10, 5), (50, 45)))
    assert tangled(Layout(110, 50, boxes, (one, other), "")) == ()


@given(graph=graphs())
@settings(max_examples=40, deadline=None)
def test_with_a_margin_boxes_keep_their_size_and_their_distance(graph: Graph) -> None:
    layout = spaced_coordinates(graph, 1.0)
    assert [place.node.name for place in layout.placed] == [node.name for node in graph.nodes]
    for place, node in zip(layout.placed, graph.nodes, strict=True):
        assert (place.node.width, place.node.height) == pytest.approx((node.width, node.height))
    for one, other in combinations(layout.placed, 2):
        assert (
            one.x + one.node.width + 1.99 <= other.x
            or other.x + other.node.width + 1.99 <= one.x
            or one.y + one.node.height + 1.99 <= other.y
            or other.y + other.node.height + 1.99 <= one.y
        )


def test_with_a_margin_arrows_end_at_the_boxes_and_the_tips_of_diamonds() -> None:
    graph = Graph((Node("a", 10, 10, True), Node("b", 10, 6)), (Link("a", "b"),), is_across=True)
    layout = spaced_coordinates(graph, 1.0)
    (_, points), (one, other) = layout.routes[0], layout.placed
    assert points[0] == pytest.approx((one.x + 10, one.y + 5), abs=0.05)
    assert points[-1] == pytest.approx((other.x, other.y + 3), abs=0.05)


@given(graph=graphs())
@settings(max_examples=40, deadline=None)
def test_a_tree_is_never_tangled(graph: Graph) -> None:
    names = [node.name for node in graph.nodes]
    tree = tuple(Link(names[(place - 1) // 2], name) for place, name in enumerate(names) if place)
    layout = by_wasm.lay_out(Graph(graph.nodes, tree, graph.is_across))
    assert tangled(layout) == ()


@pytest.mark.parametrize("text", ["", "{}", '{"bb": "0,0,1,1", "objects": []}'])
def test_what_is_no_layout_is_told(text: str) -> None:
    with pytest.raises(NoLayoutError):
        layout_from_json(text, Graph((Node("a", 9, 6),), ()), "somebody")


def test_nothing_heavy_is_loaded_until_a_map_is_drawn() -> None:
    program = (
        "import chamberwise.exports.layout.coordinates, sys\n"
        "import chamberwise.exports.full.make\n"
        "print('wasmtime' in sys.modules, 'graphviz' in sys.modules)"
    )
    made = subprocess.run(
        [sys.executable, "-c", program], cwd=TOP, capture_output=True, text=True, check=True
    )
    assert made.stdout.split() == ["False", "False"]
