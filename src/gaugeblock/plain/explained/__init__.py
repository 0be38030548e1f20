"""What is told of a line that hangs on no table."""
