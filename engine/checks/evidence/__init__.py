"""Checks on sources and reviews."""
