"""Published models of the risk that the posterior capsule tears."""
