"""The published patterns as formulas over walks that end, and as small machines that watch them."""
