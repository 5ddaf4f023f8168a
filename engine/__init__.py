"""The domain: reading, model, meaning, checks, walk. Knows no terminal, template or printer."""
