"""Data only: pathways, vocabulary and the schema for editors."""
