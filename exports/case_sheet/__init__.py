"""The case table on paper: what each combination of the assessment leads to."""
