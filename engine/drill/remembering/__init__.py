"""What is kept of a run beside its journal: few figures, from which progress is told."""
