"""Short keys that people type."""
