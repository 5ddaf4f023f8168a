"""When what is due again: advice by a published algorithm, never a verdict on anybody."""
