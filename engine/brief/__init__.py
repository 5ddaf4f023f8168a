"""A list for the day: cases by label, the lenses on the shelf, and what to have ready."""
