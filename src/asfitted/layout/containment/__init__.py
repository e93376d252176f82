"""Containment unfolded along its length, and cut across at its fullest points."""
