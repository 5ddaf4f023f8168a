"""One rule a file, by what it is about."""
