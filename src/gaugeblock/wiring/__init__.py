"""Wiring: one circuit of a vehicle: its wire, its fuse, its drop; a battery that stands."""

from gaugeblock.answer.wing import Wing

WING = Wing(
    "wiring",
    {
        "circuit": ("commands", "the wire and the fuse of one circuit"),
        "fuse": ("commands", "the fuse of a load, or the largest that a wire allows"),
        "drop": ("commands", "the volts that a wire loses on its way"),
        "reach": ("commands", "how far a wire may run before it loses so many volts"),
        "wiresize": ("commands", "a wire's gauge as copper, or the gauge of a metric wire"),
        "parked": ("commands", "how long a battery bears a standing draw, or what draw for how long"),
    },
    {"circuit": "circuit", "drop": "lost", "reach": "reach", "fuse": "fusing", "wire_size": "size", "parked": "parked"},
    {"circuits": "Circuit", "batteries": "Battery"},
    hints=(
        r"wires?|wiring|cables?|amps?|[0-9]+ ?a|volts?|[0-9]+"
        r" ?v|fuses?|circuits?|awg|voltage|watts?|relay|battery|parked|drain|ma|milliamps?"
    ),
)
