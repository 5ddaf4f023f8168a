"""What a run and many runs show, one measure a file; never one percentage, never a ranking."""
