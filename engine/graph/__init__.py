"""The step graph, for the checks that speak of its shape."""
