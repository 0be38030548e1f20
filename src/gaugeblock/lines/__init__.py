"""Lines: what a line, hose, fluid or fuel stands, and lines past hot parts."""

from gaugeblock.answer.wing import Wing

WING = Wing(
    "lines",
    {
        "heat": ("commands", "what a line, hose, fluid or fuel stands"),
        "route": ("commands", "lines past hot parts: cool enough, allowed, held, joined"),
    },
    {"heat": "heat", "route": "route"},
    {"lines": "Line"},
    job_commands=("route",),
)
