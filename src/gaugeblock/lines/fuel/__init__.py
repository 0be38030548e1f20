"""Fuel supply: the pump's flow from the engine's power, the feed and the return line, pressure and filter."""
