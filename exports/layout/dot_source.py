"""A graph as DOT, with names of our own making: no text of a pathway goes in."""

from __future__ import annotations

from chamberwise.exports.layout.content import Graph, NoLayoutError
from graphviz import Digraph  # type: ignore[import-untyped]

INCH = 25.4
MOST_NODES = 100
MOST_LINKS = 200
"""Even at random such a graph is laid out in a second."""


def refuse_large(graph: Graph) -> None:
    """Raise `NoLayoutError` where Graphviz could take long."""
    if len(graph.nodes) > MOST_NODES or len(graph.links) > MOST_LINKS:
        raise NoLayoutError("too large a graph to lay out in a moment")


def dot_source(graph: Graph) -> str:
    """Return DOT with fixed-size nodes without labels: Graphviz must never measure text."""
    dot = Digraph(
        graph_attr={
            "rankdir": "LR" if graph.is_across else "TB",
            "nodesep": _inches(graph.gap),
            "ranksep": _inches(graph.rise),
            "splines": "polyline",
            "margin": "0",
            "pad": "0",
            "start": "1",
        },
        node_attr={"shape": "box", "fixedsize": "true", "label": "", "margin": "0"},
        edge_attr={"arrowhead": "none"},
    )
    names = {node.name: f"n{place}" for place, node in enumerate(graph.nodes)}
    for node in graph.nodes:
        shape = {"shape": "diamond"} if node.is_diamond else {}
        size = {"width": _inches(node.width), "height": _inches(node.height)}
        dot.node(names[node.name], **size, **shape)
    for place, link in enumerate(graph.links):
        dot.edge(names[link.start], names[link.end], id=f"e{place}")
    return str(dot.source)


def _inches(length: float) -> str:
    return f"{length / INCH:.5f}"
