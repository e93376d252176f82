"""How clauses, tables and figures of the wiring rules are known: one wording for every sheet."""

from __future__ import annotations

#: BS 7671 was read up to its second amendment; nothing was compared with the printed fourth.
NUMBERS_OF = "the 2018 book with its amendments up to A2:2022"
CLAUSES = (
    f"Clauses and tables of BS 7671 carry the numbers of {NUMBERS_OF}, and figures are as known "
    "from it; neither was compared with the printed A4:2026: check them there."
)
NOT_COMPARED = "clauses and tables numbered as in the 2018 book, not compared with the printed A4"
#: The words behind a source, and what each of them means.
HOW_KNOWN = (
    ("seen", "read on a published page that reprints the table"),
    ("seen in part", "some figures of the table were read so, the others recalled"),
    ("memory", "recalled, not read: check the figure in the book"),
    ("derived", "worked out from other figures of the tables named"),
    ("common practice", "a rule of the trade, in no standard"),
    ("none of these", "a clause or a formula: no figure is taken from a table"),
)
