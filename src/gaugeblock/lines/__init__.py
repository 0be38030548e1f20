"""Lines: what a line, hose, fluid or fuel stands, lines past hot parts; the brakes and the fuel supply."""

from gaugeblock.answer.wing import Wing

WING = Wing(
    "lines",
    {
        "heat": ("commands", "what a line, hose, fluid or fuel stands"),
        "coolant": ("commands", "where a coolant freezes, and boils under its cap"),
        "antifreeze": ("commands", "how much neat antifreeze a cooling system takes"),
        "route": ("commands", "lines past hot parts: cool enough, allowed, held, joined"),
        "clips": ("commands", "how many clips a line takes, and where they stand"),
        "growth": ("commands", "how much a hot length between two anchors grows"),
        "brake": ("brakes.commands", "one brake circuit: pressure, stroke, pedal; tests and rules of brakes"),
        "mastercylinder": ("brakes.commands", "another bore of a master cylinder: its pressure, its pedal"),
        "pedal": ("brakes.commands", "the pedal, the foot or the bore for a wanted brake pressure"),
        "clutch": ("clutch.commands", "a hydraulic clutch: how far its slave moves, which bores do it"),
        "handbrake": ("brakes.commands", "the pull and the way of a hand brake"),
        "injector": ("fuel.injector.commands", "what an injector passes at another pressure, by volume and by mass"),
        "injectorsize": ("fuel.injector.commands", "how much one injector must pass for an engine's power"),
        "fuel": ("fuel.commands", "what the fuel pump must deliver, and what its lines lose"),
    },
    {
        "heat": "heat",
        "coolant": "cooling",
        "antifreeze": "antifreeze",
        "route": "route",
        "clips": "held",
        "growth": "held",
        "brake": "brakes.circuit",
        "brake_fact": "brakes.facts",
        "brake_hose": "brakes.hose",
        "mastercylinder": "brakes.master",
        "pedal": "brakes.pedal",
        "clutch": "clutch.travel",
        "handbrake": "brakes.hand",
        "injector": "fuel.injector.flow",
        "injector_size": "fuel.injector.size",
        "fuel": "fuel.supply",
        "fuel_line": "fuel.line",
        "fuel_test": "fuel.leak",
        "fuel_habit": "fuel.habits",
    },
    {"lines": "Line", "brakes": "Brake", "fuel": "Fuel"},
    job_commands=("route",),
    hints=(
        r"fluids?|dot|hoses?|boil\w*|hot|heat|temp\w*|fuel|coolant|antifreeze|boots?|grommets?|melt\w*|wrap|[0-9]+"
        r" ?(?:c|f|degrees)|deg|r[0-9]+|rubber|gasoline|petrol|diesel|e85"
        r"|brakes?|bleed\w*|pedal|master|cal?lipers?|drums?|residual|handbrake|parking|psi|wheel"
        r" cyl\w*|slave|clutch|pumps?|bsfc|injectors?|gph|lph|hp|carb\w*|efi"
    ),
)
