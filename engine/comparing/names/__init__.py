"""Things that bear another name now and are the same things, and names that mean something else."""
