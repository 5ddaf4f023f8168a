"""Checks on cautions and on calling for help."""
