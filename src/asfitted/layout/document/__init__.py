"""Flowing text pages: headings, paragraphs, lists and tables, measured and broken over pages."""
