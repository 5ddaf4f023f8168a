"""Faults put into the text of good files, each with the name and the line it must be told by."""
