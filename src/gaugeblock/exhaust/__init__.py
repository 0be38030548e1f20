"""Exhaust: pipe size, joints, gaps and outlet; a run with its growth, hangers and fixed point."""

from gaugeblock.answer.wing import Wing

WING = Wing(
    "exhaust",
    {"exhaust": ("commands", "pipe size, run, joints, gaps, outlet of an exhaust, ignition beside it")},
    {
        "exhaust_pipe": "pipe",
        "exhaust_run": "run.answer",
        "exhaust_gap": "gap",
        "exhaust_joint": "joint",
        "exhaust_hanger": "hanger",
        "exhaust_wrap": "wrap",
        "exhaust_outlet": "outlet",
        "exhaust_ignition": "ignition",
    },
    {"exhausts": "Exhaust"},
    hints=(
        r"exhausts?|tail ?pipes?|mufflers?|silencers?|collectors?|hangers?|slip|bellows|flex|back"
        r" ?pressure|cross ?over|balance|outlet|hp|horsepower|bhp|litres?|liters?|cc|expanded?|timing|heat ?range"
        r"|wrap\w*|headers?|manifolds?|downpipes?|gap|how (?:far|close|near)"
        r"|plug (?:gap|reach|wires?|leads?)|reach|re-?torque|(?:plugs?|leads?|wires?) .*headers?"
    ),
)
