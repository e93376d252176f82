"""Detail sheets: how outlets, isolators, cameras and armoured ends are connected.

A *figure* draws one kind of connection that the job needs, with the tags it applies to. ``figures``
of one subject share a sheet, a caution, notes and a table of where they apply.
"""
