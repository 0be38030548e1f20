"""Brakes: hydraulics of one circuit, the hand brake, and what rules and habits say of brakes."""
