"""From how far print can be read, by the angle its letters fill."""
