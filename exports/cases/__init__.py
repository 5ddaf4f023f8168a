"""The table of cases as text, CSV and JSON."""
