"""The brief of a list: as text, for programs, and on one page for the clipboard."""
