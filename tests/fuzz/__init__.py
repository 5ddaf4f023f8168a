"""Damage without plan: nothing that stands in a file may make reading or checking fall over."""
