"""Turns of speech -> what a person would have typed: parts, numbers, what is said beside a question."""
