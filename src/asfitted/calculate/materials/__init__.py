"""What the job needs: lengths to cut, fittings, fixings, terminations, and what to order.

Quantities follow from the geometry and from tables; where only trade custom gives a count its
basis says "common practice". Nothing here looks at prices.
"""
