"""Published tables as data files, and typed look-ups over them.

A look-up is exact or rounded to the safe side, never interpolated; each gives a Figure that carries
its source to paper.
"""
