"""Single-line diagram: what hangs where, the room its words need, its sheets, and its ink.

``tree`` reads the model, ``words`` says it, ``room`` measures it, ``splitting`` divides it over
sheets, ``placing`` gives it places; the other modules draw one part each.
"""
