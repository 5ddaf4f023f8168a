"""Blocks of text that flow: into columns, over pages, as rows of a table, on cards to cut out."""
