"""How strong the checks and rules are: every single-edit mutant of a pathway, killed or not."""
