"""What a proof says: rules in words, verdicts, and the story of each counterexample."""
