"""One file a kind of edit, each a pure function from a pathway and the shared words to mutants."""
