"""A pathway to start from."""
