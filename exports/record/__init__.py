"""The record of a walk: what was asked, answered, done and left owed."""
