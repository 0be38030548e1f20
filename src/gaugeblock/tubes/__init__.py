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
        "section": ("commands", "area, section modulus and mass of a tube"),
        "box": ("commands", "area, section modulus and mass of a square or rectangular tube"),
        "arc": ("commands", "how much tube a bend takes up"),
        "overbend": ("commands", "how far to pull a bend that springs back"),
        "beam": ("commands", "what a straight tube bears in the middle of a span"),
        "offset": ("commands", "how far apart the two bends of an offset are"),
        "cope": ("commands", "how deep a tube is coped to sit on another"),
        "mitre": ("commands", "at which angle the slices of a bend are sawn"),
        "sheet": ("commands", "what a piece of sheet weighs"),
        "sheetbend": ("folded.command", "flat length, bend deduction and least radius of bent sheet"),
        "flare": ("commands", "a flare: its wall limit, nut and port thread"),
    },
    {
        "bend": "bend.sheet",
        "gauge": "gauge",
        "pipe": "pipe",
        "material": "material",
        "section": "section",
        "box": "box",
        "arc": "arc",
        "overbend": "overbend",
        "beam": "beam",
        "offset": "offset",
        "cope": "notch",
        "mitre": "mitre",
        "sheet": "sheet_metal",
        "sheet_bend": "folded.part",
        "flare": "flare",
        "plan": "plan.plan",
    },
    {"tubes": "Tube"},
    job_commands=("tube",),
    hints=(
        r"tub\w*|bend\w*|die|gauge|gage|ga|guage|pipes?|sch\w*|flar\w*|dom|erw|wall|od|sheet|awg|bwg"
        r"|nps|1020|4130|nut|lines?|strength|yield|section|weigh\w*|mass|twist\w*|pie|mit(?:er|re)\w*|slices?|segments?"
    ),
)
