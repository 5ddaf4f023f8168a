"""How values of the engine, lists and quoted words are told in the language that is spoken."""
