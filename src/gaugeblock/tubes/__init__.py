"""Tubes: does a tube take a bend, what it is made of, how its end is flared, and its marks on a straight stick."""

from gaugeblock.answer.wing import Wing

WING = Wing(
    "tubes",
    {
        "bend": ("commands", "does this tube take that bend"),
        "tube": ("plan.command", "from what a tube must clear to marks on a straight stick"),
        "gauge": ("commands", "a gauge number as a wall"),
        "pipe": ("commands", "a nominal pipe size as a diameter"),
        "material": ("commands", "what a tube's material guarantees"),
        "flare": ("commands", "a flare: its wall limit, nut and port thread"),
    },
    {
        "bend": "bend", "gauge": "stock_tables", "pipe": "stock_tables", "material": "stock_tables",
        "flare": "stock_tables",
    },
    {"tubes": "Tube"},
    job_commands=("tube",),
)  # fmt: skip
