"""Coordinates for a graph, by the first way of laying out that can be used here."""

from __future__ import annotations

from chamberwise.exports.layout.content import Graph, Layout, NoLayoutError


def coordinates(graph: Graph) -> Layout:
    """Return where nodes and arrows lie: by Graphviz in process, as a program, or in plain rows."""
    from chamberwise.exports.layout import by_program, by_rows, by_wasm

    for lay_out in (by_wasm.lay_out, by_program.lay_out):
        try:
            return lay_out(graph)
        except NoLayoutError:
            continue
    return by_rows.lay_out(graph)
