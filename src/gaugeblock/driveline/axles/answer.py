"""The answer ``axle``: the torque that can reach one axle shaft, and whether the shaft carries it."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline import keys
from gaugeblock.driveline.axles.judging import judged
from gaugeblock.driveline.axles.pull import Pull
from gaugeblock.tables.load import Refdata, refdata


def axle(
    material: str | None = None,
    *,
    treatment: str | None = None,
    temper: str | None = None,
    diameter: str | None = None,
    bore: str | None = None,
    length: str | None = None,
    engine_torque: str | None = None,
    converter: str | None = None,
    gear: str | None = None,
    transfer: str | None = None,
    ratio: str | None = None,
    differential: str | None = None,
    bias: str | None = None,
    wheel_load: str | None = None,
    grip: str | None = None,
    radius: str | None = None,
    section: str | None = None,
    hardness: str | None = None,
    yield_strength: str | None = None,
    certificate: str | None = None,
    case_depth: str | None = None,
    core_hardness: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """The torque that can reach one axle shaft, and whether the shaft carries it.

    Parameters are text as people write them. Of the shaft: ``material`` ``4340``, ``treatment``, ``temper``,
    ``diameter`` at its smallest, ``bore``, the ``length`` that twists, and what ``steel`` takes of its own. From the
    engine: ``engine_torque``, stall ratio of a ``converter``, first ``gear``, ``transfer`` and axle ``ratio``, and the
    ``differential``: ``open``, ``locked`` or ``limited slip`` with its torque ``bias``. From the tyre: ``wheel_load``
    when it pulls hardest, ``grip`` and loaded ``radius``.

    Returns a Sheet: the factor on torsional yield first, under the smaller of the two torques; the torque by each way,
    stress, share of yield, twist, and the smallest diameter that would do. What was not given is asked.

    Raises LookupMiss for a steel that the tables do not have, InputError or UnitError for what cannot be read.
    Source of the method: Mott, Machine Elements in Mechanical Design, 4th ed., p. 547; statics of both ends.

    >>> sheet = axle("4340", treatment="quenched and tempered", temper="800 degF", diameter="1-1/4 in",
    ...     engine_torque="300 lbf*ft", gear="2.5", ratio="4", differential="open",
    ...     wheel_load="1000 lbf", grip="0.9", radius="13 in")
    >>> round(sheet.figure("shaft_torque").typical)
    975
    """
    data = data or refdata()
    asked = {k: v for k, v in locals().items() if k != "data"}
    pull = Pull.read(asked)
    return judged(shaft_of(asked, data), pull, asked, data)


def shaft_of(typed: dict[str, str | None], data: Refdata) -> keys.Shaft:
    """The shaft itself, from texts by key."""

    def read(key: str, dimension: str, where: str = "") -> units.Measure | None:
        return keys.positive(typed[key], dimension, where or key.replace("_", " "))

    temper, hard, core = typed["temper"], typed["hardness"], typed["core_hardness"]
    return keys.Shaft(
        typed["material"] or ("steel not named" if typed["yield_strength"] else ""),
        typed["treatment"] or ("as certified" if typed["yield_strength"] else ""),
        temper=None if temper is None else units.parse_measure(temper, "temperature", "temper"),
        section=read("section", "length"),
        diameter=read("diameter", "length", "shaft diameter"),
        bore=read("bore", "length"),
        length=read("length", "length"),
        hardness=None if hard is None else keys.hardness(hard, data),
        yield_strength=read("yield_strength", "stress"),
        certificate=typed["certificate"] or "",
        case_depth=read("case_depth", "length"),
        core_hardness=None if core is None else keys.hardness(core, data, "core hardness"),
    )
