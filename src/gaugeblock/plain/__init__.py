"""A question as people say it: the line is read with what the wings know, and gets the answer of the command for it."""
