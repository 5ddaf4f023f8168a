"""Names used and not defined, defined and not used."""
