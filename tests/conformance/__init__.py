"""Whether the pathways do what a careful surgeon expects: facts, situations, safety rules."""
