"""Universal joints: the true working angle of each, what the second leaves of the first's swing, and what is usual."""
