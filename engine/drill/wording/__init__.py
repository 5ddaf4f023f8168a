"""What somebody typed, and what it means: clauses, phrases, and how sure one can be."""
