"""The answer ``axle``: the torque that can reach one axle shaft, and whether the shaft carries it."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.needs import known, together
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.driveline import keys
from gaugeblock.driveline.axles.form import Form, parts_of
from gaugeblock.driveline.axles.judging import judged
from gaugeblock.driveline.axles.pull import Pull
from gaugeblock.driveline.steel import UNNAMED
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any, TypedDict, Unpack

    from gaugeblock.answer.asking import Topic
    from gaugeblock.answer.table import Table

    class Typed(TypedDict, total=False):
        """Every key of an axle shaft but its material, as text."""

        treatment: str | None
        temper: str | None
        diameter: str | None
        bore: str | None
        length: str | None
        engine_torque: str | None
        converter: str | None
        gear: str | None
        transfer: str | None
        ratio: str | None
        differential: str | None
        bias: str | None
        wheel_load: str | None
        grip: str | None
        radius: str | None
        axle_load: str | None
        height: str | None
        wheelbase: str | None
        driven: str | None
        lifted: str | None
        parts: str | None
        spline: str | None
        teeth: str | None
        root: str | None
        fillet: str | None
        shoulder: str | None
        shear_modulus: str | None
        section: str | None
        hardness: str | None
        yield_strength: str | None
        certificate: str | None
        case_depth: str | None
        core_hardness: str | None


# Every key but the material.
KEYS = (
    "treatment",
    "temper",
    "diameter",
    "bore",
    "length",
    "engine_torque",
    "converter",
    "gear",
    "transfer",
    "ratio",
    "differential",
    "bias",
    "wheel_load",
    "grip",
    "radius",
    "axle_load",
    "height",
    "wheelbase",
    "driven",
    "lifted",
    "parts",
    "spline",
    "teeth",
    "root",
    "fillet",
    "shoulder",
    "shear_modulus",
    "section",
    "hardness",
    "yield_strength",
    "certificate",
    "case_depth",
    "core_hardness",
)


_NEEDS = {"certificate": ("yield_strength",), "root": ("spline",)}


def _axle_topic() -> Topic:
    from gaugeblock.driveline.ask.axles import AXLE

    return AXLE


@opens(_axle_topic, "material")
def axle(material: str | None = None, *, data: Refdata | None = None, **typed: Unpack[Typed]) -> Sheet:
    """The torque that can reach one axle shaft, and whether the shaft carries it.

    Parameters are text as people write them. Of the shaft: ``material`` ``4340``, ``treatment``, ``temper``,
    ``diameter`` at its smallest, ``bore``, the ``length`` that twists, and of its steel the bar's own
    ``section``, ``hardness``, ``yield_strength`` by its ``certificate``, ``case_depth`` and ``core_hardness``. From the
    engine: ``engine_torque``, stall ratio of a ``converter``, first ``gear``, ``transfer`` and axle ``ratio``, and the
    ``differential``: ``open``, ``locked`` or ``limited slip`` with its torque ``bias``. From the tyre: ``wheel_load``
    when it pulls hardest, ``grip`` and loaded ``radius``; or, in place of the wheel load, the ``axle_load`` at
    rest, the
    ``height`` of the centre of mass and the ``wheelbase``, with the axle that is ``driven`` (``rear`` or ``front``) and
    ``lifted`` (``yes``) where its other wheel is in the air.
    Of its form: ``parts`` (``1-1/2 in x 4 in, 1-1/4 in x 22 in``) of a stepped shaft, the pitch of a ``spline``
    with its
    ``teeth`` and ``root``, a ``fillet`` under a ``shoulder``, its own ``shear_modulus``.

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
    asked = asked_of(material, typed)
    together(asked, _NEEDS)
    return judged(shaft_of(asked, data), form_of(asked), Pull.read(asked), asked, data)


def axle_compared(
    what: str, material: str | None = None, *, data: Refdata | None = None, **typed: Unpack[Typed]
) -> Table:
    """The same axle shaft side by side: ``what`` is ``steels``, of every steel, treatment and temper in the table, or
    ``splines``, with the next sizes of its spline. Keys as of ``axle``.

    Returns a Table: what may be used first, then what is asked about, the strongest first.

    Raises InputError where no torque or no size is known, or for anything else to compare.

    >>> table = axle_compared("steels", diameter="1-1/4 in", wheel_load="1000 lbf", grip="0.9", radius="13 in")
    >>> table.lines[0].sheet.decision.kind
    'use'
    """
    data = data or refdata()
    asked = asked_of(material, typed)
    together(asked, _NEEDS)
    from gaugeblock.driveline.axles.comparing import compared

    return compared(what, shaft_of(asked, data), form_of(asked), Pull.read(asked), asked, data)


def asked_of(material: str | None, typed: Mapping[str, object]) -> dict[str, str | None]:
    """What was typed under every key there is; TypeError, as of any function, for a name that is none."""
    known(typed, KEYS, "axle")
    return {"material": material, **{k: typed.get(k) for k in KEYS}}  # type: ignore[misc]


def form_of(typed: Mapping[str, Any]) -> Form:
    """The form of the shaft, from texts or measures by key."""
    if typed["spline"] is not None or typed["teeth"] is not None:
        from gaugeblock.driveline.splines.sizes import per_inch_of, teeth_of

        if typed["spline"] is not None:
            per_inch_of(typed["spline"])
        if typed["teeth"] is not None:
            teeth_of(typed["teeth"])
    return Form(
        parts_of(typed["parts"]),
        typed["spline"],
        typed["teeth"],
        typed["root"],
        keys.positive(typed["fillet"], "length", "fillet"),
        keys.positive(typed["shoulder"], "length", "shoulder"),
        keys.own_stress(typed["shear_modulus"], "shear modulus", "11.5 Msi"),
    )


def shaft_of(typed: Mapping[str, Any], data: Refdata) -> keys.Shaft:
    """The shaft itself, from texts or measures by key."""

    def read(key: str, dimension: str, where: str = "") -> units.Measure | None:
        return keys.positive(typed[key], dimension, where or key.replace("_", " "))

    own = typed["yield_strength"] or typed["hardness"]
    temper, hard, core = typed["temper"], typed["hardness"], typed["core_hardness"]
    return keys.Shaft(
        typed["material"] or (UNNAMED if own else ""),
        typed["treatment"] or ("as certified" if typed["yield_strength"] else "as measured" if own else ""),
        temper=units.parse_measure(temper, "temperature", "temper") if isinstance(temper, str) else temper,
        section=read("section", "length"),
        diameter=read("diameter", "length", "shaft diameter"),
        bore=read("bore", "length"),
        length=read("length", "length"),
        hardness=None if hard is None else keys.hardness(hard, data),
        yield_strength=keys.own_stress(typed["yield_strength"], "yield strength", "120 ksi"),
        certificate=typed["certificate"] or "",
        case_depth=read("case_depth", "length"),
        core_hardness=None if core is None else keys.hardness(core, data, "core hardness"),
    )
