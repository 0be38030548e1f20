"""Wiring: one circuit of a vehicle: its wire, its fuse, its drop."""

from gaugeblock.answer.wing import Wing

WING = Wing(
    "wiring",
    {"circuit": ("commands", "the wire and the fuse of one circuit")},
    {"circuit": "circuit"},
    {"circuits": "Circuit"},
)
