"""Injectors: what one passes at another pressure, and how large one must be."""
