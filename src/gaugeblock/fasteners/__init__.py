"""Fasteners: what to tighten a thread or a part to, the clamp it gives, and whether bolt and thread stand it."""

from gaugeblock.answer.wing import Wing

WING = Wing(
    "fasteners",
    {
        "torque": ("commands", "what to tighten a thread to, and the clamp it gives"),
        "part": ("commands", "what to tighten a plug, line nut, clamp or wheel nut to"),
        "hole": ("commands", "what to drill for a tap, or for a bolt to pass"),
        "drill": ("commands", "a drill by its number or letter, and the drills next to a size"),
        "thread": ("commands", "the pitch of a thread, its diameter, the area that carries"),
        "identify": ("commands", "the thread that a diameter and a pitch are of"),
        "spanner": ("commands", "the spanner, socket or hex key for a thread, and back"),
        "pipethread": ("commands", "the drill of a pipe thread, its threads an inch"),
        "grade": ("commands", "what a bolt of a grade stands, and the marks on its head"),
        "engagement": ("commands", "how much thread a bolt needs in the metal"),
    },
    {
        "torque": "torque",
        "part": "part",
        "hole": "hole",
        "drill": "drills",
        "engagement": "depth",
        "thread": "thread_facts",
        "identify": "identify",
        "spanner": "spanner",
        "pipe_thread": "pipe_thread",
        "grade": "grade_facts",
    },
    {"fasteners": "Fastener"},
    ("physics", "torque_physics", "part_physics", "hexagon_physics"),
    hints=r"torqu\w*|tight\w*|bolts?|screws?|studs?|nuts?|grade|gr ?[0-9]|class|m[0-9][0-9.x]*|[0-9/]+-[0-9]{2}|plugs?"
    r"|drill\w*|tap|tapping|holes?|deep|engage\w*|threads?|tpi|pitch|npt|bspt|spanners?|sockets?|wrench\w*|allen|flats",
)
