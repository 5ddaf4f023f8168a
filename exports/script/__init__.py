"""The reader's script: the pathway's main line, one breath a line."""
