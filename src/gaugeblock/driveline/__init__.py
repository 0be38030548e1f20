"""Driveline: shafts and their steel, hardness, splines, the set-up of an axle, joints."""

from gaugeblock.answer.wing import Wing

WING = Wing(
    "driveline",
    {
        "steel": ("commands", "does a shaft of this steel carry that torque"),
        "hardness": ("commands", "a hardness on other scales and as strength"),
        "spline": ("commands", "the sizes of a spline"),
        "setup": ("commands", "one step of an axle's set-up"),
        "joint": ("commands", "joint angles: how uneven they drive"),
        "jointlimit": ("commands", "the greatest usual angle of a joint at a driveshaft's speed"),
        "axle": ("axles.commands", "does an axle shaft carry what engine and tyre send to it"),
        "shaft": ("propshafts.commands", "a propeller shaft: length, travel, whip, joints"),
        "shims": ("shims.commands", "shims for a backlash, or for the mark on a pinion"),
        "gearing": ("gears.commands", "engine speed at road speed, by axle ratio and tyre"),
        "ratio": ("gears.commands", "an axle ratio by the teeth of its gears"),
        "finaldrive": ("gears.commands", "the axle ratio for an engine speed at a road speed"),
        "turns": ("gears.commands", "an axle ratio by turning a wheel and counting the shaft"),
        "tyre": ("gears.commands", "what a tyre measures by its size"),
        "shaftstress": ("commands", "the shear stress of a round shaft under a torque"),
        "roadspeed": ("gears.commands", "how fast it goes at a speed of the engine"),
        "regear": ("gears.commands", "the axle ratio for other tyres, at the engine speed of before"),
        "truespeed": ("gears.commands", "how fast it goes by a speedometer that was right with another tyre"),
    },
    {
        "steel": "steel",
        "hardness": "hardness",
        "spline": "splines.answer",
        "setup": "setups.answer",
        "joint": "joints.answer",
        "joint_limit": "joints.limit",
        "axle": "axles.answer",
        "axle_compared": "axles.answer",
        "shaft": "propshafts.answer",
        "shims": "shims.answer",
        "gearing": "gears.answer",
        "tyre": "gears.size",
        "shaftstress": "stress",
        "roadspeed": "gears.road_speed",
        "regear": "gears.regear",
        "true_speed": "gears.true_speed",
        "ratio": "gears.teeth",
        "turns": "gears.turns",
        "finaldrive": "gears.final_drive",
    },
    {
        "driveline": "Driveline",
        "axles": "AxleShaft",
        "shafts": "PropellerShaft",
        "splines": "Splines",
        "joints": "Joints",
        "shims": "ShimLog",
        "gearing": "GearingItem",
    },
    hints=(
        r"steel|shafts?|axles?|rockwell|hrc|rc|brinell|hb|hard\w*|gears?|rear|ratio|rpm|revs|tires?"
        r"|tyres?|mph|joints?|ujs?|spline[ds]?|backlash|preload|pinion|ring|diff\w*|4340|1541|300m"
        r"|tooth|teeth|angles?|[0-9]\.[0-9]{2}|[0-9]{4}|strength"
    ),
)
