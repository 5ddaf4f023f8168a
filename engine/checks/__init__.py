"""One file a check, each with one slug."""
