"""Proving safety rules on every walk, and telling the walk on which one breaks."""
