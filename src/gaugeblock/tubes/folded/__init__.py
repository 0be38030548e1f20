"""Bends in flat sheet and plate: what they take, what comes off the legs, and the least radius."""
