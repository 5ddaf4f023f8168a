"""From placed sheets to PDF, SVG and PNG, and the measuring of text by what prints it."""
