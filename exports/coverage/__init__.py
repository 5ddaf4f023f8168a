"""A plan of drills, told."""
