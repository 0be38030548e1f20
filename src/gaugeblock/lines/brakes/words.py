"""What a brake's answer says."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.printing import number_only
from gaugeblock.lines.brakes.keys import MEASURES, SLAVE

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.lines.brakes.keys import Circuit
    from gaugeblock.lines.brakes.working import Worked
    from gaugeblock.tables.load import Refdata

MEASURED = tuple(MEASURES)
SECOND = "Test every joint under pressure, and have a second person check the brakes before the vehicle moves."
BLEEDING = "Bleed by the vehicle's manual; habit is right rear, left rear, right front, left front"
CLUTCH_BLEEDING = "Bleed by the vehicle's manual, with the nipple of the slave uppermost"
GIVES_WAY = "Hoses, calipers and linings give way, and air does: the pedal goes further than this. Measure it."


def title(of: Circuit) -> str:
    """The head of the sheet."""
    got = of.given.measures
    parts = [of.kind or "brake circuit"]
    parts += [f"master cylinder {got['master'].text}"] if "master" in got else []
    parts += [f"pistons {got['bore'].text}"] if "bore" in got else []
    return ", ".join(parts)


def when(of: Circuit) -> str:
    """The condition of the pressure."""
    got = of.given.measures
    ratio = got["ratio"].number
    boost = ", without a booster" if of.kind != SLAVE else ""
    if "assist" in got:
        times = float(got["assist"].value)
        boost = f" and a booster that makes it {times:g} times as much" if times != 1 else ", without a booster"
    return f"with {got['force'].text} on a pedal of {ratio} to 1{boost}"


def do(of: Circuit, worked: Worked, data: Refdata) -> str:
    """What comes of the sizes."""
    said = [f"It is the pressure {when(of)}."]
    if worked.push is not None:
        said.append(f"Each {of.noun} is pushed with {number_only(worked.push, data)}.")
    if worked.stroke is not None and worked.pedal is not None:
        stroke, pedal = number_only(worked.stroke, data), number_only(worked.pedal, data)
        said.append(f"The pistons take {stroke} of stroke, {pedal} of pedal, at the least.")
    if worked.speed is not None:
        said.append(f"The fluid moves at {number_only(worked.speed, data)} in a tube that feeds the whole circuit.")
    return " ".join(said)


def cautions(of: Circuit) -> list[Caution]:
    """What can hurt."""
    if of.kind == SLAVE:
        return [Caution(GIVES_WAY, "damage")]
    return [Caution(SECOND, "injury"), Caution(GIVES_WAY, "damage")]
