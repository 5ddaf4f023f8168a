"""The wall chart: a main line read from top to bottom, with short branches to its side."""
