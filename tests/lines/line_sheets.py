"""A line beside heat with all that its estimate needs, a line as a job gives it, and what a sheet says."""

from __future__ import annotations

from gaugeblock.lines.job import Line

BESIDE = {
    "material": "brazed double-wall steel tube",
    "od": "3/16 in",
    "fluid": "DOT 4",
    "gap": "1 in",
    "hot_od": "2 1/4 in",
    "hot_temperature": "300 to 450 degC",
    "hot_finish": "0.6 to 0.9",
    "finish": "0.5 to 0.9",
    "air": "30 to 50 degC",
    "soak_air": "60 to 90 degC",
    "speed": "3 to 10 m/s",
}


def check_of(sheet, start):
    return next(c for c in sheet.checks if c.name.startswith(start))


def hottest(sheet):
    """The estimate of the hottest case."""
    return next(f for f in sheet.figures if f.quantity == "line_temperature")


def says(sheet, words):
    return any(words in c.text for c in sheet.cautions)


def job_line(**keys):
    """A line as a job file gives it."""
    refused = []
    line = Line.read({"name": "front line", **keys}, (), refused)
    assert not refused
    return line
