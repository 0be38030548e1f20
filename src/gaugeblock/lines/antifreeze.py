"""The answer ``antifreeze``: how much neat antifreeze a cooling system takes, filled from empty or topped up."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc.heat import antifreeze_to_fill, antifreeze_to_swap
from gaugeblock.errors import Ambiguous, InputError
from gaugeblock.lines.cooling import ETHYLENE, TABLE, share_of
from gaugeblock.tables.load import Refdata, canonical, refdata
from gaugeblock.units import Measure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

VERB = "NEAT ANTIFREEZE"
_WHOLE = 100
_MOST = 60  # per cent: more glycol freezes sooner again
_LEAST = 20  # per cent: a share that somebody may have meant the other way round
_SENSELESS = 70  # per cent: nobody fills more, for it cools worse and freezes sooner
_WATER = 273.15  # K: a frost is colder than that


def antifreeze(
    system: str,
    *,
    frost: str | None = None,
    mix: str | None = None,
    now: str | None = None,
    kind: str = ETHYLENE,
    data: Refdata | None = None,
) -> Sheet:
    """How much neat antifreeze goes into a cooling system.

    ``system`` is what it holds in all (``9 L``, ``14 qt``); what is wanted is ``frost``, the cold that it must stand
    (``-25 degC``), or the ``mix`` (``50 %``, ``50/50``); ``now`` the share of glycol that is in it (``30 %``): so much
    is drained and put back neat, without it the system is empty; ``kind`` of the glycol.

    Returns a Sheet whose decision is the volume of neat antifreeze. For a frost it is the least mixture of the tables
    that freezes no sooner. Raises Ambiguous where neither frost nor mix is given; InputError, UnitError or LookupMiss
    for what cannot be read. Source: shares by volume; what is drained has the share that is in it.

    >>> antifreeze("14 qt", mix="50 %", now="30 %").decision.figure.text
    '4'
    """
    data = data or refdata()
    asked: dict[str, str | None] = {"system": system, "frost": frost, "mix": mix, "now": now, "kind": kind}
    whole = read_positive(system, "volume", "system")
    title = f"antifreeze for {whole.text}"
    item = canonical(data, TABLE, "item", kind)
    cold = units.parse_measure(frost, "temperature", "frost") if frost is not None else None
    share = share_of(mix) if mix is not None else 0.0
    has = share_of(now) if now is not None else None
    if frost is None and mix is None:
        why = "neither the frost nor the mixture was given"
        raise Ambiguous("antifreeze", "frost", why, ("frost", "mix"), "give one of both: -25 degC, or 50 %")
    if frost is not None and mix is not None:
        raise InputError(frost, "frost", f"{mix} is wanted too, and they are two wishes", (), "give one of both")
    doubts = _doubts(whole, cold, share, data)
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    rests: list[Figure] = []
    if cold is not None:
        found = _for_frost(cold, item, data)
        if found is None:
            do = f"No mixture of the tables stands {frost}: the antifreeze's maker prints what does."
            return Sheet(title, asked, data, [], [], _cautions(item), decision=none(VERB, do))
        share, freezes = found
        rests.append(freezes)
    if not 0 < share < _WHOLE:
        raise InputError(str(mix), "mix", "no mixture", (), "write the share of glycol as 50 % or 50/50")
    volume = stated(whole, "coolant_volume", "system", data)
    wanted = stated(_percent(share), "glycol_share", "mix", data)
    inputs = [volume, wanted]
    if has is None:
        number = antifreeze_to_fill(base(volume), share / _WHOLE)
        rule, said = "antifreeze_to_fill", f"Then fill up with clean water: {share:g} % of it all is glycol."
    else:
        if not 0 <= has < share:
            raise InputError(
                str(now), "now", f"not under the {share:g} % that is wanted", (), "there is nothing to add"
            )
        inputs.append(stated(_percent(has), "glycol_share", "now", data))
        number = antifreeze_to_swap(base(volume), has / _WHOLE, share / _WHOLE)
        rule, said = "antifreeze_to_swap", "Drain as much first, mixed as it is, and put this in neat."
    key = {"system": whole.text, "mix": f"{share:g} %", "now": now or "empty"}
    put_in = units.from_base(number, whole.unit)
    text = units.significant(put_in, 2)
    made = derived(rule, "antifreeze_volume", put_in, whole.unit, inputs, data, key=key, text=text)
    freeze = next(
        (f"It freezes at {number_only(f, data, cold.unit if cold is not None else None)}. " for f in rests), ""
    )
    over = " Over 60 % it freezes sooner again." if share > _MOST else ""
    decision = use(VERB, made, f"{said} {freeze}Check it with a hydrometer or a refractometer.{over}")
    return Sheet(title, asked, data, [made, *inputs, *rests], [], _cautions(item), decision=decision)


def _doubts(whole: Measure, cold: Measure | None, share: float, data: Refdata) -> dict[str, str]:
    """What is hardly meant, by option: a system of no car, a frost above freezing, more glycol than anybody fills."""
    doubts = {}
    if not is_plausible(whole, "coolant_volume", data):
        doubts["system"] = did_you_mean(f"{whole.text} is no usual cooling system", ())
    if cold is not None and units.to_base(float(cold.value), cold.unit) >= _WATER:
        doubts["frost"] = did_you_mean(f"{cold.text} is no frost: water does not freeze at it", (f"-{cold.text}",))
    if _SENSELESS < share < _WHOLE:
        said = f"{share:g} % of antifreeze is more than anybody fills: it cools worse, and freezes sooner again"
        doubts["mix"] = did_you_mean(said, (f"{_WHOLE - share:g} %",) if _WHOLE - share >= _LEAST else ())
    return doubts


def _for_frost(cold: Measure, item: str, data: Refdata) -> tuple[float, Figure] | None:
    """The least share of the tables that does not freeze at a cold, and where it does; None where none is enough."""
    rows = [r for r in data.table(TABLE).rows if r["item"] == item and r["quantity"] == "freezing_point"]
    shares = sorted({float(r["state"].removesuffix(" %")) for r in rows if not r["standing"]})
    for share in shares:
        state = f"{share:g} %"
        freezes = lookup.look_up(TABLE, "freezing_point", data=data, item=item, state=state)
        if base(freezes) <= units.to_base(float(cold.value), cold.unit) * (1 + 1e-9):
            return share, freezes
    return None


def _percent(share: float) -> Measure:
    return units.parse_measure(f"{share:g} %", "ratio", "mix")


def _cautions(item: str) -> tuple[Caution, ...]:
    text = "Ethylene glycol poisons people and animals, and tastes sweet: catch it, and keep it closed."
    poison = (Caution(text, "injury"),) if item == ETHYLENE else ()
    hot = "Never open the cap of a hot engine: coolant over its boiling point flashes into steam."
    return (Caution(hot, "injury"), *poison)
