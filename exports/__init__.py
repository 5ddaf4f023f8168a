"""From pathways and walks to files: one renderer a file."""
