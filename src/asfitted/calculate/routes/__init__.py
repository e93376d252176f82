"""Which way each cable goes along containment and walls, and how long it is."""
