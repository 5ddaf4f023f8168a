"""What is worth talking about after a run: few things, by rule, people apart from systems."""
