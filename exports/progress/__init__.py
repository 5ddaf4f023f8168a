"""How rehearsal went: as text with plots of plain characters, as a table, as values."""
