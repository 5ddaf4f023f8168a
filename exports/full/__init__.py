"""The full pathway on paper: every step, every answer, every arrow, as a ladder."""
