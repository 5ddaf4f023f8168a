"""Coordinates by every way of laying out: fixed sizes, no overlap, the same each time."""

from __future__ import annotations

import subprocess
import sys
from itertools import combinations
from pathlib import Path

import pytest
from chamberwise.exports.layout import by_program, by_rows, by_wasm, coordinates
from chamberwise.exports.layout.content import Graph, Layout, Link, Node, NoLayoutError
from chamberwise.exports.layout.json_reading import layout_from_json
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


def test_too_large_a_graph_runs_out_of_fuel(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(by_wasm, "FUEL", 100_000)
    with pytest.raises(NoLayoutError, match="stopped"):
        by_wasm.lay_out(Graph((Node("a", 9, 6), Node("b", 9, 6)), (Link("a", "b"),)))


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
