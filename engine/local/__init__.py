"""A unit's own layer over a pathway: what it changes, what it expects there, who is to blame."""
