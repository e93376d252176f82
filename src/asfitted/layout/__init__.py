"""Layout: results become sheets with every line, sign and word at its place in mm."""
