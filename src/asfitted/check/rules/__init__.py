"""The rules, one file each; the registry finds them by scanning this folder in sorted order."""
