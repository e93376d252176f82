"""Marks of a revision on a sheet: clouds round what changed, triangles, the table of revisions."""
