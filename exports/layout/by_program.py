"""Graphviz as a program on the search path, where it is installed."""

from __future__ import annotations

import subprocess

import graphviz  # type: ignore[import-untyped]
from chamberwise.exports.layout.content import Graph, Layout, NoLayoutError
from chamberwise.exports.layout.dot_source import dot_source, refuse_large
from chamberwise.exports.layout.json_reading import layout_from_json

MADE_BY = "Graphviz (program)"


def lay_out(graph: Graph) -> Layout:
    """Return a layout, or raise `NoLayoutError` where there is no `dot` or the graph is large."""
    refuse_large(graph)
    try:
        found = graphviz.pipe("dot", "json0", dot_source(graph).encode(), quiet=True)
    except (graphviz.ExecutableNotFound, subprocess.CalledProcessError) as error:
        raise NoLayoutError("no program dot on the search path") from error
    return layout_from_json(found, graph, MADE_BY)
