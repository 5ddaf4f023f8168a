"""Coordinates for small graphs, by whichever layout program there is: only numbers, no drawing."""
