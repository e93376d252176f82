"""Draws laid-out sheets: SVG, PDF pages and previews. Moves, sizes and decides nothing."""
