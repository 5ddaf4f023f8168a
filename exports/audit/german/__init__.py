"""What the rules on wording search in German: decimal commas, German units and negators.

German words are common practice, no source; the harms are those of the English rules.
"""
