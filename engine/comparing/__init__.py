"""What one library says that another does not: the change in meaning, not in text."""
