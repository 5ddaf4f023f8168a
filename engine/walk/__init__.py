"""A walk by a person: journal, undo, resume, record."""
