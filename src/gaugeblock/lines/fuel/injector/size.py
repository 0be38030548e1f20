"""The answer ``injector_size``: how much one injector must pass for an engine's power."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, ask, use
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import Ambiguous
from gaugeblock.lines.fuel.demand import SUPPLY, least, top
from gaugeblock.lines.fuel.keys import BOOSTS, NATURAL, Supply
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

VERB = "INJECTOR AT LEAST"
_MOST = 16  # injectors of one engine: two for each of eight cylinders
_NAME = "what the engine burns"
_ROOM = (
    "Leave room: the pressure in the rail, and a pump that sags, move it. Another size is tuned before it is driven."
)


def injector_size(
    power: str,
    injectors: str,
    *,
    duty: str | None = None,
    boost: str | None = None,
    consumption: str | None = None,
    fuel: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """How much one injector must pass held open.

    ``power`` of the engine (``220 hp``), ``injectors`` how many (``4``), ``duty`` the share of the time that they are
    open at full load (``80 %``; what shops let them work to, where it was not given), ``boost`` or ``no boost``,
    ``consumption`` the engine's own (``0.5 lb/(hp*h)``), ``fuel`` gasoline (default), diesel, E85, methanol, ethanol.

    Returns a Sheet whose decision is the size at the greatest consumption on record; with and without boost, where
    that was not said. Raises Ambiguous without power or number; InputError, UnitError or LookupMiss for what cannot be
    read or is on no record. Source: what is burnt, shared out over the time that they are open.

    >>> round(injector_size("220 hp", "4", duty="80 %", boost="no boost").decision.figure.typical)
    35
    """
    data = data or refdata()
    asked = {
        "power": power,
        "injectors": injectors,
        "duty": duty,
        "boost": boost,
        "consumption": consumption,
        "fuel": fuel,
    }
    of = Supply({**asked, "injector": None})
    if of.injectors is None or not of.given.has("power"):
        raise Ambiguous("injectors", "injectors", "their number and the power are needed", (), "say both: 4 and 220 hp")
    title = f"injectors of {power} over {injectors}"
    count = stated(of.injectors, "injector_count", "injectors", data)
    own = of.given.figure("duty", data)
    doubts = {
        key: did_you_mean(f"{figure.text} {figure.unit} is no usual {figure.quantity.replace('_', ' ')}", ())
        for key, figure in (("power", of.given.sure("power", data)), *([("duty", own)] if own is not None else []))
        if not is_plausible(
            units.parse_measure(f"{figure.text} {figure.unit}", units.dimension(figure.unit), key),
            "duty_maximum" if key == "duty" else figure.quantity,  # that at full load
            data,
        )
    }
    if count.typical > _MOST:
        doubts["injectors"] = did_you_mean(f"{count.text} is no usual number of injectors", ())
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    share = own or look_up(SUPPLY, "duty_maximum", data=data, subject="injectors", case="duty", service="vehicle")
    stated_one = of.given.figure("consumption", data)
    ways: dict[str, Figure] = {}
    if stated_one is not None:
        ways[""] = _size(of, stated_one, count, share, data)
    else:
        for way in [of.boost] if of.boost is not None else list(BOOSTS):
            row = look_up(SUPPLY, "specific_fuel_consumption", data=data, subject=of.fuel, case=way, service="vehicle")
            if row.id not in [f.key.get("row") for f in ways.values()]:
                ways[way] = _size(of, row, count, share, data)
    said = f"At {units.significant(least(share) * 100, 3)} % duty. {_ROOM}"
    cautions = [
        Caution("An engine that runs lean at full load burns its pistons: have the mixture measured.", "damage")
    ]
    sizes = list(ways.values())
    if len(sizes) == 1:
        return Sheet(title, asked, data, [*sizes, share, count], [], cautions, decision=use(VERB, sizes[0], said))
    check = Check(_NAME, CANNOT_TELL, "whether it is boosted was not said", subject="boost", bears=ASK)
    question = Question(FILL_IN, "Is the engine boosted?", "boost", (_NAME,))
    shown = [
        Candidate(size, "without boost" if way == NATURAL else "with boost", "each, held open")
        for way, size in ways.items()
    ]
    decision = ask(VERB, shown, (_NAME,), f"Say whether the engine is boosted. {said}")
    figures = [*sizes, share, count]
    return Sheet(title, asked, data, figures, [check], cautions, decision=decision, questions=[question])


def _size(of: Supply, consumption: Figure, count: Figure, share: Figure, data: Refdata) -> Figure:
    """What one passes at the greatest consumption and the least duty."""
    power = of.given.sure("power", data)
    number = top(consumption) * base(power) / (base(count) * least(share))
    unit = "lb/h"
    key = {"power": power.text, "injectors": count.text, "fuel": of.fuel, "row": consumption.id}
    inputs = (power, consumption, count, share)
    return derived(
        "injector_size_of_power", "injector_mass_flow", units.from_base(number, unit), unit, inputs, data, key=key
    )
