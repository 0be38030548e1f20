"""Items of a job, one module a kind of item."""
