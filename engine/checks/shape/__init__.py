"""Checks on the shape of the step graph."""
