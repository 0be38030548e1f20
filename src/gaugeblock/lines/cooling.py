"""The answer ``coolant``: where a mixture of glycol and water freezes, and where it boils under its cap."""

from __future__ import annotations

import re

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc.heat import air_pressure, boiling_under_pressure
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.tables.load import Refdata, canonical, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Row

TABLE = "lines/fluids"
ETHYLENE = "coolant, ethylene glycol"
FACTS = {"boiling": ("boiling_point_under_cap", "boiling_point"), "freezing": ("freezing_point",)}
VERBS = {"boiling": "BOILS AT", "freezing": "FREEZES AT"}
_PARTS = re.compile(r"(?P<glycol>[0-9]{1,3}) ?[/:-] ?(?P<water>[0-9]{1,3})", re.ASCII)
_PERCENT = re.compile(r"(?P<n>[0-9]{1,3}) ?(?:%|percent|per cent)?", re.ASCII)
_WHOLE = 100
_MOST = 60  # per cent, of ethylene glycol: more of it freezes sooner, by the source of that mixture
_SEA_PA = 101325.0


def coolant(
    mix: str = "50 %",
    *,
    kind: str = ETHYLENE,
    cap: str | None = None,
    air: str | None = None,
    fact: str = "boiling",
    data: Refdata | None = None,
) -> Sheet:
    """Where a coolant freezes, and where it boils.

    Parameters are text as people write them: ``mix`` the share of glycol by volume (``50 %``, ``60/40``, glycol
    first), or ``water``; ``kind`` of the glycol (``ethylene glycol``, ``propylene glycol``); ``cap`` the pressure
    stamped on the radiator cap (``15 psi``), without which it boils as in an open pan; ``air`` the height over the sea
    (``5000 ft``) or what the barometer reads there (``90 kPa``), at the sea unless given; ``fact`` ``boiling`` or
    ``freezing``.

    Returns a Sheet. The boiling point under a cap is an estimate by water's own curve. Raises LookupMiss with the
    mixtures that the tables have, InputError or UnitError for what cannot be read.

    >>> coolant("50/50", fact="freezing").decision.figure.text
    '-34'
    """
    data = data or refdata()
    if fact not in FACTS:
        raise InputError(fact, "fact", "nothing of a coolant is called so", tuple(FACTS), "ask for one of these")
    asked = {"mix": mix, "kind": kind, "cap": cap, "air": air, "fact": fact}
    is_water = mix.strip().casefold() == "water"
    of_glycol = canonical(data, TABLE, "item", kind)
    key = {"item": "water", "state": "any"} if is_water else _glycol(mix, of_glycol, data)
    title = "water" if is_water else f"{key['item']}, {key['state']}"
    figures = [
        f for q in ("freezing_point", "boiling_point") if (f := lookup.look_up_or_none(TABLE, q, data=data, **key))
    ]
    boiling = next((f for f in figures if f.quantity == "boiling_point"), None)
    held = None
    if cap is not None:
        pressure = read_positive(cap, "stress", "cap")
        title += f", {pressure.text} cap"
        if not is_plausible(pressure, "cap_pressure", data):
            said = did_you_mean(f"{pressure.text} is no usual pressure of a radiator cap", ())
            check = Check("cap as typed", CANNOT_TELL, said, subject="cap", bears=ASK)
            question = Question(FILL_IN, said, "cap", (check.name,))
            decision = none(VERBS[fact], said)
            return Sheet(title, asked, data, figures, [check], [], decision=decision, questions=[question])
        held = stated(pressure, "cap_pressure", "cap", data)
        figures.append(held)
    around = _around(air, data)
    figures += around
    title += f", {air.strip()}" if air is not None else ""
    if boiling is not None and (held is not None or around):
        figures.append(_lifted(boiling, held, around[0] if around else None, data))
    wanted = next((f for q in FACTS[fact] for f in figures if f.quantity == q), None)
    if wanted is None:
        is_over = not is_water and share_of(mix) > _MOST
        sooner = f"More glycol than {_MOST} % freezes sooner again."
        do = sooner if is_over else f"No table that was read has where it is {fact}."
        do += " The coolant's maker prints it."
        return Sheet(title, asked, data, figures, [], _cautions(), decision=none(VERBS[fact], do))
    ordered = [wanted, *(f for f in reversed(figures) if f is not wanted)]
    return Sheet(
        title,
        asked,
        data,
        ordered,
        [],
        _cautions(),
        decision=use(VERBS[fact], wanted, _said(wanted, boiling, cap, air)),
    )


def left_to_boil(sheet: Sheet, gauge: str) -> Sheet:
    """The Sheet of where a coolant boils, told with how far from it a gauge reads."""
    boils = next((f for f in sheet.decision.figures if f.quantity in FACTS["boiling"]), None)
    if boils is None:
        return sheet
    number, unit = gauge.split()
    reads = units.from_base(units.to_base(float(number), unit), boils.unit)
    apart = boils.typical - reads
    where = f"{apart:.0f} {boils.unit} under it" if apart >= 1 else "where it boils"
    return sheet.replace(title=f"{sheet.title}; a gauge at {gauge} is {where}")


def share_of(mix: str) -> float:
    """The share of glycol, in per cent, of ``50 %`` or ``50/50``."""
    text = " ".join(mix.split())
    parts, percent = _PARTS.fullmatch(text), _PERCENT.fullmatch(text)
    if parts is not None:
        whole = int(parts["glycol"]) + int(parts["water"])
        return _WHOLE * int(parts["glycol"]) / whole if whole else 0.0
    if percent is not None:
        return float(percent["n"])
    raise InputError(mix, "mix", "not a share of glycol", (), "write it as 50 % or 50/50, or water")


def _glycol(mix: str, kind: str, data: Refdata) -> dict[str, str]:
    """The cells of a mixture."""
    share = share_of(mix)
    item = canonical(data, TABLE, "item", kind)
    states = {float(row["state"].removesuffix(" %")): row["state"] for row in _freezing(item, data)}
    cell = next((state for held, state in states.items() if abs(held - share) < 1), None)
    if cell is None and item == ETHYLENE and share > _MOST:
        return {"item": item, "state": f"{share:g} %"}
    if cell is None:
        why = "no mixture of that share in the tables"
        raise LookupMiss(mix, "mix", why, tuple(states.values()), "use the nearest, and the coolant maker's own table")
    return {"item": item, "state": cell}


def _freezing(item: str, data: Refdata) -> list[Row]:
    """The rows of where the mixtures of a glycol freeze."""
    rows = data.table(TABLE).by_quantity.get("freezing_point", ())
    return [row for row in rows if row["item"] == item and not row["standing"]]


def _around(air: str | None, data: Refdata) -> list[Figure]:
    """The pressure of the air around, and what it was worked out from: a barometer's, or that of an altitude."""
    if air is None:
        return []
    is_height = units.split_quantity(air.strip())[1] in units.spellings("length")
    measure = read_positive(air, "length" if is_height else "stress", "air", zero=is_height)
    quantity = "altitude" if is_height else "air_pressure"
    if not is_plausible(measure, quantity, data):
        why = "no height over the sea where cars run" if is_height else "no pressure of the air"
        raise InputError(measure.text, "air", why, (), "give the height, 5000 ft, or the barometer, 90 kPa")
    given = stated(measure, quantity, "air", data)
    if not is_height:
        return [given]
    pressure = units.from_base(air_pressure(base(given)), "kPa")
    key = {"altitude": measure.text}
    said = "of a day of standard weather"
    made = derived(
        "air_pressure_at_altitude", "air_pressure", pressure, "kPa", (given,), data, key=key, conditions=said
    )
    return [made, given]


def _lifted(boiling: Figure, cap: Figure | None, air: Figure | None, data: Refdata) -> Figure:
    """Where it boils under a cap, or in air that is not that of the sea."""
    over = 0.0 if cap is None else base(cap)
    quantity, said = "boiling_point_under_cap", "an estimate, by water's own curve"
    key = {**boiling.key, "cap": "none" if cap is None else f"{cap.text} {cap.unit}"}
    if air is None:
        number = units.from_base(boiling_under_pressure(base(boiling), over), boiling.unit)
        assert cap is not None
        return derived(quantity, quantity, number, boiling.unit, (boiling, cap), data, key=key, conditions=said)
    number = units.from_base(boiling_under_pressure(base(boiling), over + base(air) - _SEA_PA), boiling.unit)
    key["air"] = f"{air.typical:.4g} {air.unit}"
    inputs = (boiling, air) if cap is None else (boiling, air, cap)
    return derived("boiling_point_in_air", quantity, number, boiling.unit, inputs, data, key=key, conditions=said)


def _said(figure: Figure, boiling: Figure | None, cap: str | None, air: str | None) -> str:
    """What the figure holds for."""
    if figure.quantity == "boiling_point" and cap is None:
        return "In an open pan: a cap lifts it. Say the pressure on the cap."
    if figure.quantity == "freezing_point":
        return "By volume. Test the mixture in the car by a refractometer or a hydrometer."
    holds = " and only as long as cap and hoses hold." if cap is not None else " in an open pan: a cap lifts it."
    where = "" if air is not None else " Boils sooner up a mountain: say how high."
    if boiling is not None and cap is not None and air is None:
        where = f" The cap adds {figure.typical - boiling.typical:.0f} {figure.unit}.{where}"
    return f"An estimate, some 2 degC either way,{holds}{where}"


def _cautions() -> list[Caution]:
    scald = "Never open the cap of a hot engine: the coolant is over its boiling point, and flashes into steam."
    poison = "Ethylene glycol poisons people and animals, and tastes sweet: catch it, and keep it closed."
    return [Caution(scald, "injury"), Caution(poison, "injury")]
