"""Pure functions: SI floats or arrays in, SI floats or arrays out. No tables, no units, no I/O."""
