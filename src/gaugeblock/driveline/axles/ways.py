"""The torque that can reach one shaft: from the engine, from the tyre, and the cases that are still open."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.calc import axles as sizing
from gaugeblock.calc import driveline as calc
from gaugeblock.driveline.axles.pull import FRONT, LIMITED, LOCKED, OPEN
from gaugeblock.errors import InputError
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.axles.pull import Pull
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

ENGINE_END, TYRE_END = "engine", "tyre"
# Grips that stand in as candidates where none was given: the greatest of the table, and a fair dry road.
_GRIPS = (("new sharp dry asphalt", "any", "under 30 mph"), ("dry concrete", "any", "any"))
QUANTITIES = {
    "engine_torque": "engine_torque",
    "converter": "converter_ratio",
    "gear": "gear_ratio",
    "transfer": "transfer_ratio",
    "ratio": "axle_ratio",
    "wheel_load": "wheel_load",
    "grip": "tyre_grip",
    "radius": "tyre_loaded_radius",
    "axle_load": "axle_load",
    "height": "mass_centre_height",
    "wheelbase": "wheelbase",
}


class Case(Value):
    """One way that things may stand: ``when`` (blank where nothing is open), what engine and tyre give (None: not
    known, or not counted), and the ``torque`` that reaches the shaft.
    """

    __slots__ = ("engine", "torque", "tyre", "when")

    when: str
    engine: Figure | None
    tyre: Figure | None
    torque: Figure

    def __init__(self, when: str, engine: Figure | None, tyre: Figure | None, torque: Figure) -> None:
        put(self, "when", when)
        put(self, "engine", engine)
        put(self, "tyre", tyre)
        put(self, "torque", torque)

    @property
    def end(self) -> str:
        """Which end governs."""
        if self.engine is None or self.tyre is None:
            return ENGINE_END if self.tyre is None else TYRE_END
        return ENGINE_END if base(self.engine) <= base(self.tyre) else TYRE_END


def given(pull: Pull, key: str, data: Refdata) -> Figure | None:
    """What was typed under a key, as a figure."""
    measure: Measure | None = getattr(pull, key)
    return None if measure is None else stated(measure, QUANTITIES[key], key.replace("_", " "), data)


def cases(pull: Pull, data: Refdata) -> list[Case]:
    """Every way that things may stand, the greatest torque first; one that makes no difference is left out."""
    engines = _engines(pull, data)
    tyres = _tyres(pull, data)
    out = [_case(e_when, e, "", None, data) for e_when, e in engines if pull.lacks_tyre()]
    more = "a torque converter multiplies the engine's torque" if engines else ""
    out += [_case(more, None, t_when, t, data) for t_when, t in tyres if not engines or pull.converter is None]
    out += [_case(e_when, e, t_when, t, data) for e_when, e in engines for t_when, t in tyres]
    kept: dict[float, Case] = {}
    for case in sorted(out, key=lambda c: -base(c.torque)):
        kept.setdefault(round(base(case.torque), 6), case)
    return list(kept.values())


def _case(e_when: str, engine: Figure | None, t_when: str, tyre: Figure | None, data: Refdata) -> Case:
    ends = tuple(f for f in (engine, tyre) if f is not None)
    least = min(ends, key=base)
    key = {**ends[0].key, **ends[-1].key}
    not_held = "the tyre does not let go first" if tyre is None else ""
    whole = "the engine can give it" if engine is None and not e_when else ""
    when = " and ".join(w for w in (e_when, t_when, not_held, whole) if w)
    torque = derived(
        "shaft_torque_governing",
        "shaft_torque",
        least.typical,
        least.unit,
        ends,
        data,
        key=key,
        conditions=f"the {'engine' if least is engine else 'tyre'} governs",
    )
    return Case(when, engine, tyre, torque)


def _engines(pull: Pull, data: Refdata) -> list[tuple[str, Figure]]:
    """What the engine sends to one shaft, for each differential that there may be."""
    if pull.lacks_engine():
        return []
    parts = {k: given(pull, k, data) for k in ("engine_torque", "converter", "gear", "transfer", "ratio")}
    said = ", ".join(f"{k.replace('_', ' ')} {f.text} {f.unit}".removesuffix(" 1") for k, f in parts.items() if f)
    out = []
    for when, share in _shares(pull, data):
        factors = {k: base(f) if f is not None else 1.0 for k, f in parts.items()}
        value = calc.axle_torque(
            factors["engine_torque"],
            factors["gear"],
            factors["ratio"],
            factors["transfer"],
            share.typical,
            factors["converter"],
        )
        inputs = (*(f for f in parts.values() if f is not None), share)
        unit = "lbf*ft" if parts["engine_torque"].unit.startswith("lbf") else "N*m"  # type: ignore[union-attr]
        key = {"engine": said, "share": units.significant(share.typical)}
        figure = derived(
            "shaft_torque_from_engine",
            "shaft_torque_engine",
            units.from_base(value, unit),
            unit,
            inputs,
            data,
            key=key,
            conditions=f"from the engine, {share.conditions}",
        )
        out.append((when, figure))
    return out


def _shares(pull: Pull, data: Refdata) -> list[tuple[str, Figure]]:
    """The share of the ring gear's torque that one shaft may get, the greatest first."""

    def share(rule: str, value: float, said: str, *inputs: Figure) -> Figure:
        key = {"share": units.significant(value)}
        return derived(rule, "shaft_torque_share", value, "1", inputs, data, key=key, conditions=said)

    locked = share("share_locked_differential", 1.0, "all of it on one side")
    half = share("share_open_differential", 0.5, "half of it to each side")
    if pull.differential == OPEN:
        return [("", half)]
    if pull.differential == LOCKED:
        return [("", locked)]
    if pull.differential == LIMITED:
        if pull.bias is None:
            return [("the limited slip differential locks", locked), ("it does not lock at all", half)]
        bias = stated(pull.bias, "torque_bias", "bias", data)
        made = base(bias) / (1 + base(bias))
        return [("", share("share_limited_slip", made, "its share by the bias", bias))]
    return [("the differential can lock", locked), ("the differential is open", half)]


def _tyres(pull: Pull, data: Refdata) -> list[tuple[str, Figure]]:
    """The torque at which the tyre lets go: by its own grip, or by those that may stand in."""
    radius = given(pull, "radius", data)
    if radius is None or set(pull.lacks_tyre()) - {"grip"}:
        return []
    own = given(pull, "grip", data)
    grips = [("", own)] if own is not None else [_stand_in(*keys, data) for keys in _GRIPS]
    unit = "N*m" if radius.unit == "mm" else "lbf*ft"
    out = []
    for when, grip in grips:
        load = _load(pull, grip, data)
        most = _most(grip)
        value = calc.traction_torque(base(load), most, base(radius))
        shown = units.significant(most)
        figure = derived(
            "shaft_torque_from_tyre",
            "shaft_torque_tyre",
            units.from_base(value, unit),
            unit,
            (load, grip, radius),
            data,
            key={
                "load": f"{load.text or units.significant(load.typical, 6)} {load.unit}",
                "grip": shown,
                "radius": f"{radius.text} {radius.unit}",
            },
            conditions=f"the tyre lets go, grip {shown}",
        )
        out.append((when, figure))
    return out


def _most(grip: Figure) -> float:
    return grip.high if grip.high is not None else grip.typical


def _load(pull: Pull, grip: Figure, data: Refdata) -> Figure:
    """The weight on the wheel: as given, or what stands on the axle and what the pull shifts."""
    own = given(pull, "wheel_load", data)
    if own is not None:
        return own
    axle, height, wheelbase = (given(pull, k, data) for k in ("axle_load", "height", "wheelbase"))
    assert axle is not None
    assert height is not None
    assert wheelbase is not None
    front = pull.driven == FRONT
    if not front and _most(grip) * base(height) >= base(wheelbase):
        why = f"at a grip of {units.significant(_most(grip))} the front wheels lift"
        raise InputError(f"{height.text} {height.unit}", "height", why, (), "give the height over the road")
    rule, value, said = ("axle_share_lifted", 1.0, "other wheel in the air") if pull.lifted else _EVEN
    share = derived(rule, "axle_load_share", value, "1", (), data, key={"wheel": said}, conditions=said)
    number = sizing.wheel_load_pulling(base(axle), _most(grip), base(height), base(wheelbase), value, front)
    return derived(
        f"wheel_load_{pull.driven}_pulling",
        "wheel_load",
        units.from_base(number, axle.unit),
        axle.unit,
        (axle, share, grip, height, wheelbase),
        data,
        key={"load": f"{axle.text} {axle.unit}", "grip": units.significant(_most(grip)), "wheel": said},
        conditions=f"{said}; at the greatest pull of the {pull.driven} axle",
    )


_EVEN = ("axle_share_even", 0.5, "half of the axle's weight")


def _stand_in(surface: str, tyre: str, speed: str, data: Refdata) -> tuple[str, Figure]:
    grip = lookup.look_up("driveline/grip", "tyre_grip", data=data, surface=surface, tyre=tyre, speed=speed)
    return f"the grip is {units.significant(_most(grip))}, as on {surface}", grip
