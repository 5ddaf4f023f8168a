"""Colour as the eye meets it: contrast, colour vision, lightness."""
