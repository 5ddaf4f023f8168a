"""The steps of a pathway as a spreadsheet, and back to the file of a pathway."""
