"""The parts screens are made of."""
