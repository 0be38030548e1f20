"""The job file: its values, its model, reading it with all problems told at once, the starter, and writing safely.

Import from the rooms (``job.read``, ``job.starter``, ``job.output``); none loads a heavy library.
"""
