"""Pack: drawn sheets become files. Nothing is calculated or laid out again."""
