"""The clutch worked by a fluid: its travel, its question, its command."""
