"""The drawn contact patterns of a ring gear, where the step is to read one."""

from __future__ import annotations

from gaugeblock.answer.drawing import Drawing

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.keys import Step

# What to move by TM 10-3930-660-34, p. 9-29 steps d to g, as driveline/rules has it under "contact pattern".
_READ = (
    ("as it should be", 0.45, 0.5, "Leave it."),
    ("too far to the toe", 0.2, 0.5, "More backlash."),
    ("too far to the heel", 0.8, 0.5, "Less backlash."),
    ("high: near the tooth top", 0.45, 0.78, "Pinion in, toward the ring gear."),
    ("low: near the root", 0.45, 0.22, "Pinion out, away from it."),
)


def patterns(of: Step) -> list[Drawing]:
    """The drawing, for a step that reads the pattern; nothing for another."""
    if "pattern" not in f"{of.component} {of.step}".casefold():
        return []
    from gaugeblock.drawing.contact_patterns import Pattern, contact_patterns

    svg = contact_patterns([Pattern(*one) for one in _READ])
    return [Drawing("contact pattern, drive side (TM 10-3930-660-34; your axle's manual governs)", svg)]
