"""What people call a key of a job file otherwise."""

from __future__ import annotations

# Their word -> the keys that it may mean, of which a table has one or none.
OTHERWISE: dict[str, tuple[str, ...]] = {
    **dict.fromkeys(("distance", "clearance", "space", "spacing", "away"), ("gap",)),
    **dict.fromkeys(("item", "metal", "alloy", "steel", "made_of"), ("material",)),
    **dict.fromkeys(("torques", "torque", "bolts", "bolt", "nuts", "screws", "studs", "threads"), ("fasteners",)),
    **dict.fromkeys(("hoses", "hose", "pipes", "plumbing"), ("lines", "tubes")),
    **dict.fromkeys(("diameter", "dia", "outside_diameter"), ("od",)),
    **dict.fromkeys(("thickness", "gauge", "gage"), ("wall",)),
    **dict.fromkeys(("lube", "lubricant", "lubrication", "oil"), ("condition",)),
    **dict.fromkeys(("class", "strength", "marking"), ("grade",)),
    **dict.fromkeys(("clr", "bend_radius"), ("radius",)),
    "temp": ("hot_temperature", "temperature"),
    **dict.fromkeys(("wires", "wire", "cables", "wiring"), ("circuits",)),
    **dict.fromkeys(("propshafts", "driveshafts", "driveshaft"), ("shafts",)),
    **dict.fromkeys(("exhaust", "pipe"), ("exhausts",)),
    **dict.fromkeys(("size", "bolt_size"), ("thread", "od")),
}
