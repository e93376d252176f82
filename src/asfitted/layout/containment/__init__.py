"""Containment unfolded: each run laid out along its length, and cut across at its fullest points."""
