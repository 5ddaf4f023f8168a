"""Placed sheets: what stands where on paper, before any file is made."""
