"""Checks on safety rules: whether what they speak of can come about at all."""
