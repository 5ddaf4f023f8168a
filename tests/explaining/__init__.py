"""The examples that `explain` shows, made out of the cases that the checks are tested with."""
