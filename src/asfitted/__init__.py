"""asfitted draws electrical installations from a written spec.

The pipeline is one-way: spec -> resolve -> calculate -> check -> layout -> draw -> pack.
DEVELOPERS.md describes each stage on one page.
"""

__version__ = "0.1.0"
