"""Every combination of the assessment findings, and where it leads."""
