"""Lens power: where the lens sits, how strong it is, and what refraction it leaves."""
