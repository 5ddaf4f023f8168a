"""The calculations, each a file with what it takes and what it does not know."""
