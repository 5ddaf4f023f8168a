"""What stands in a finished PDF, read back by two readers that know nothing of each other."""
