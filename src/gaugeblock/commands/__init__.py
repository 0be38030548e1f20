"""What each command of the command line runs, one module a domain."""
