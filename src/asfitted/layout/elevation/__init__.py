"""Wall elevations: what each wall carries, drawn to scale as seen from inside the room."""
