"""Whether a printed sheet still says what its pathway says."""
