"""From engine values to what a screen or a line of speech says. Knows no terminal."""
