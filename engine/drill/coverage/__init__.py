"""Which drills walk every answer and set off every rule, and what somebody has not met yet."""
