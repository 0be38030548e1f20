"""The tables of a job that the exhaust has."""

from gaugeblock.job.kind import Kind

KINDS: dict[str, Kind] = {}
