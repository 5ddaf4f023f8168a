"""Days of review after an operation."""
