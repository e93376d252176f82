"""Compare: two checked jobs give what changed between them, in plain words.

Things are told apart by their tags, never by their order in a file.
"""
