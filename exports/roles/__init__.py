"""Role cards: for each duty its first minute, its own words, and what it does later."""
