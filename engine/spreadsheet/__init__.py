"""The steps of a pathway as rows of a spreadsheet, for people who do not write YAML."""
