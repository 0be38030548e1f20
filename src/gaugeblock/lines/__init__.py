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
    hints=(
        r"fluids?|dot|hoses?|boil\w*|hot|heat|temp\w*|fuel|coolant|antifreeze|boots?|grommets?|melt\w*|wrap|[0-9]+"
        r" ?(?:c|f|degrees)|deg|r[0-9]+|rubber|gasoline|petrol|diesel|e85"
    ),
)
