"""Checks on what can be known where, over every state a team can come to."""
