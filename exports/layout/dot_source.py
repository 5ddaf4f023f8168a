"""A graph as DOT, with names of our own making: no text of a pathway goes in."""

from __future__ import annotations

from chamberwise.exports.layout.content import Graph
from graphviz import Digraph  # type: ignore[import-untyped]

INCH = 25.4


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
        dot.node(names[node.name], width=_inches(node.width), height=_inches(node.height))
    for place, link in enumerate(graph.links):
        dot.edge(names[link.start], names[link.end], id=f"e{place}")
    return str(dot.source)


def _inches(length: float) -> str:
    return f"{length / INCH:.5f}"
