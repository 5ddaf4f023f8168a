"""Workings told: as text, for programs, for a spreadsheet and for a calendar."""
