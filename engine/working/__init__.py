"""Calculations that show every line of their working, to be followed with a pocket calculator."""
