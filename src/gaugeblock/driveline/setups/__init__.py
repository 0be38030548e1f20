"""One step of an axle's set-up: the maker's figure, as found, as left."""
