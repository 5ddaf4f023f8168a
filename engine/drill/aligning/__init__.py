"""How a run lies against its pathway: the cheapest way of laying one beside the other."""
