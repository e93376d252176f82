"""What lies in each section of containment: fill, groups, weight and separation."""
