"""A stamp on paper and on the screen: modules, text and plain values."""
