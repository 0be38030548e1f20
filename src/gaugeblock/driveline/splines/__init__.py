"""Involute splines: their sizes from the standard's equations, and what a torque does to them."""
