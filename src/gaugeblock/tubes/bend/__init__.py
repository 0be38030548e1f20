"""A bend: the least radius of a tube, the die against it, and what the bend does to the metal."""
