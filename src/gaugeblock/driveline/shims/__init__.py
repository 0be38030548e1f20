"""Shim arithmetic of an axle: backlash moved without changing the preload; pinion depth by the pinion's mark."""
