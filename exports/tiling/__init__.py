"""A large sheet cut into A4 tiles, and how to put them together."""
