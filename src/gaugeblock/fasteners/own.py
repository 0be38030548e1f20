"""What is typed of a bolt's own figures, read: friction and strengths, the preload that is wanted, what it clamps."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.errors import InputError
from gaugeblock.fasteners.bolt import GRIP, Grip, Own

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.known import Known
    from gaugeblock.units import Measure

_MOST_BARE = 3  # a bare number up to this is a share of proof; beyond it the unit was left out
_PRELOAD_DO = 'write a share of proof ("70 %"), a force ("5000 lbf") or a stretch ("0.006 in")'


def read_own(given: Mapping[str, str | None]) -> Own:
    """The Own of options as text; InputError names the one that is wrong."""
    made = {}
    for name, text in given.items():
        if text is None:
            continue
        said = name.replace("_", " ")
        if name == "preload":
            made[name] = read_preload(text, said)
        elif name == "nut_factor":
            made[name] = _known(text, "ratio", said, "0.16")
        else:
            made[name] = read_strength(text, said)
    return Own(**made)


def _known(text: str, dim: str, where: str, example: str) -> Known:
    from gaugeblock.known import parse_known

    return parse_known(text, dim, where, example)


def read_strength(text: str, where: str) -> Known:
    """A strength of the bolt."""
    return _known(text, "stress", where, "85 ksi")


def read_preload(text: str, where: str) -> Known:
    """A share of proof, a force or a stretch: one figure."""
    value = text.partition(" by ")[0]
    spelled = units.split_quantity(value)[1]
    unit = spelled if spelled in units.UNITS else units.TYPED.get(spelled, spelled or "1")
    dim = units.dimension(unit) if unit in units.UNITS else ""
    if dim not in ("ratio", "force", "length") or (dim == "ratio" and " to " in value):
        raise InputError(text[:60], where, "no share, force or stretch", (), _PRELOAD_DO)
    got = _known(text, dim, where, {"ratio": "70 %", "force": "5000 lbf"}.get(dim, "0.006 in"))
    if got.is_range:
        raise InputError(text[:60], where, "one figure is wanted", (), _PRELOAD_DO)
    if not spelled and got.typical.value > _MOST_BARE:
        near = tuple(f"{value.strip()} {u}" for u in ("%", "lbf", "N"))
        raise InputError(text[:60], where, "a preload needs its unit", near, "add the unit")
    return got


def read_grip(given: object) -> Grip | None:
    """The grip from Python or the command: its length as text, or a mapping of the keys of a job. Read strictly."""
    if given is None or isinstance(given, Grip):
        return given
    if isinstance(given, str):
        given = {"length": given}
    if not hasattr(given, "items"):
        raise InputError("grip", "grip", "not a grip", (), 'write its length, as "1-1/2 in"')
    texts: dict[str, str] = {}
    for key, value in given.items():
        if key not in GRIP:
            raise InputError(str(key)[:60], "grip", "not a key of a grip", GRIP, "use one of these")
        if value is not None and not isinstance(value, str):
            raise InputError(str(value)[:60], f"grip.{key}", "text is wanted", (), 'write it as "1-1/2 in"')
        if value:
            texts[key] = value
    if "length" not in texts:
        do = "give the length of the grip: all that is clamped, washers too"
        raise InputError("grip", "grip.length", "is not given", (), do)
    return Grip(
        _measure(texts, "length", "length"),
        _measure(texts, "shank", "length") if "shank" in texts else None,
        texts.get("metal", ""),
        read_modulus(texts["modulus"], "grip.modulus") if "modulus" in texts else None,
        read_modulus(texts["bolt_modulus"], "grip.bolt_modulus") if "bolt_modulus" in texts else None,
        _measure(texts, "load", "force") if "load" in texts else None,
    )


def _measure(texts: Mapping[str, str], key: str, dim: str) -> Measure:
    from gaugeblock.answer.making import read_positive

    return read_positive(texts[key], dim, f"grip.{key}", zero=key == "shank")


def read_modulus(text: str, where: str) -> Known:
    """A modulus of elasticity."""
    return _known(text, "stress", where, "30 Msi")
