"""Commands for those who work on the tool itself."""
