"""Which sheets there are, and how an order becomes files."""
