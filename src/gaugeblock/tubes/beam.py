"""Beam: what a straight tube bears in the middle between two supports, how far it sags, and when it bends for good."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK as BEARS_ASK
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, STOP, Bound, Check
from gaugeblock.answer.decision import Candidate, ask, none, stop, use
from gaugeblock.answer.making import base, read_positive, stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import tubes as calc
from gaugeblock.calc.frame import G
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.tubes import keys
from gaugeblock.tubes.bend.bent import Bent
from gaugeblock.tubes.bend.metal import known, modulus_of
from gaugeblock.tubes.own import read_own
from gaugeblock.tubes.section import section_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.decision import Decision
    from gaugeblock.figure import Figure
    from gaugeblock.units import Measure

NAME = "bears its load (screening)"
VERB = "KEEP UNDER"
_PERCENT = 100
# What is typed -> dimension and quantity.
READ = {
    "span": ("length", "beam_span"),
    "load": ("mass", "load_mass"),
    "bump": ("ratio", "bump_factor"),
    "share": ("ratio", "yield_share_allowed"),
}
SCREENING = (
    "A screening: one load in the middle, ends that may turn. Welds, holes, bends, fatigue and loads from the side are"
    " not in it. Who signs for the vehicle decides whether it carries."
)


def beam(
    od: str,
    wall: str,
    span: str,
    *,
    material: str | None = None,
    load: str | None = None,
    bump: str | None = None,
    share: str | None = None,
    yield_strength: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """What a straight round tube bears in the middle between two supports.

    Parameters are text as people write them: ``od`` ``1-1/2 in``, ``wall`` ``.095 in``, ``span`` between the supports
    ``30 in``; ``material`` ``1020 DOM`` gives the yield strength, which ``yield_strength`` states in its place;
    ``load`` what sits in the middle, ``500 lb``; ``bump`` how many times its weight it comes to on the road, ``2``;
    ``share`` of the yield strength that is allowed, ``50 %``.

    Returns a Sheet: without a load the greatest one, with it the share of the yield strength, the stress and the sag.
    What would bend for good stops; a bump factor or an allowed share that was not said is asked for. Raises InputError,
    UnitError or LookupMiss for what cannot be read. Source: elementary beam theory, a load in the middle of a beam on
    two supports: moment F L / 4, sag F L^3 / (48 E I).

    >>> sheet = beam("1-1/2 in", ".095 in", "30 in", material="1020 DOM", bump="2", share="50 %")
    >>> round(sheet.decision.figure.typical)
    254
    """
    data = data or refdata()
    asked = {"od": od, "wall": wall, "span": span, "material": material, "load": load, "bump": bump, "share": share}
    asked["yield_strength"] = yield_strength
    typed = {key: value for key, value in asked.items() if key in READ and value is not None}
    read = {key: read_positive(value, READ[key][0], key) for key, value in typed.items()}
    size, stock = keys.outside_diameter(od, data), keys.stock(material or "steel", data)
    own = read_own({"yield_strength": yield_strength})
    tube = Bent(size, keys.wall(wall, data), stock, None, "vehicle", data, own=own)
    title = f"{tube.key['od']} x {tube.key['wall']} {stock.label if material else 'tube'} across {read['span'].text}"
    odd = _odd(read, data)
    if odd:
        decision = none("", odd[0].text)
        return Sheet(title, asked, data, [], [], (), decision=decision, questions=odd)
    given = {key: stated(measure, READ[key][1], key, data) for key, measure in read.items()}
    weak = known(tube, "yield_strength")
    if weak is None:
        text = "Name the grade and condition of the tube, or state its yield strength."
        check = Check(NAME, CANNOT_TELL, "the yield strength of this metal is not known", bears=BEARS_ASK)
        question = Question(FILL_IN, text, "material", (NAME,))
        return Sheet(title, asked, data, [*given.values()], [check], (), decision=none("", text), questions=[question])
    shape = {f.quantity: f for f in section_of(tube, None, None, None, is_named=True).figures}
    return _sheet(title, asked, tube, shape, weak, given, data)


def _odd(read: dict[str, Measure], data: Refdata) -> list[Question]:
    """What was typed and is hardly meant."""
    out = []
    for key, measure in read.items():
        quantity = READ[key][1]
        if is_plausible(measure, quantity, data):
            continue
        reach = plausible_range(quantity, data)
        said = did_you_mean(
            f"{measure.text} is no usual {key} of a tube", other_readings(measure, *reach) if reach else ()
        )
        out.append(Question(FILL_IN, said, key, (f"{key} as typed",)))
    return out


def _sheet(
    title: str,
    asked: dict[str, str | None],
    tube: Bent,
    shape: dict[str, Figure],
    weak: Figure,
    given: dict[str, Figure],
    data: Refdata,
) -> Sheet:
    """The figures and what they come to."""
    stiff, span = shape["section_modulus"], given["span"]
    bump = base(given["bump"]) if "bump" in given else 1.0
    allowed = base(given["share"]) if "share" in given else 1.0
    least = units.to_base(weak.low if weak.low is not None else weak.typical, weak.unit)
    pound = "lb" if tube.unit == "in" else "kg"
    most = calc.beam_centre_load(least * allowed, base(stiff), base(span)) / (G * bump)
    inputs = (weak, stiff, span, *(given[key] for key in ("bump", "share") if key in given))
    words = _words(given)
    mark = "|".join(f"{key} {figure.text}" for key, figure in given.items())
    greatest = tube.derived(
        "beam_centre_load",
        "load_mass_maximum",
        units.from_base(most, pound),
        pound,
        inputs,
        conditions=words,
        mark=mark,
    )
    figures, part, check = [greatest], None, None
    if "load" in given:
        force = base(given["load"]) * bump * G
        stress = tube.derived(
            "beam_centre_stress",
            "bending_stress",
            units.from_base(calc.beam_centre_stress(force, base(stiff), base(span)), weak.unit),
            weak.unit,
            (given["load"], *((given["bump"],) if "bump" in given else ()), stiff, span),
            conditions=words,
            mark=mark,
        )
        part = tube.derived(
            "yield_share",
            "yield_share",
            _PERCENT * base(stress) / least,
            "%",
            (stress, weak),
            conditions=words,
            mark=mark,
        )
        figures += [part, stress, *_sag(tube, shape, given, force, words, mark)]
        check = _judged(part, allowed, given, data)
    figures += [*given.values(), weak, stiff, shape["second_moment"]]
    asks = _asks(given)
    decision = _decided(greatest, part, check, asks, data)
    cautions = [Caution(SCREENING, "injury", (greatest.id,), "calculated"), *_rules(greatest, data)]
    checks = [*([] if check is None else [check]), *(Check(q.key, CANNOT_TELL, q.text, bears=BEARS_ASK) for q in asks)]
    return Sheet(title, asked, data, figures, checks, cautions, decision=decision, questions=asks)


def _rules(greatest: Figure, data: Refdata) -> list[Caution]:
    """What the rules say of a load on a tube: what bumps make of it."""
    return [
        Caution(rule["statement"], rule["severity"], (greatest.id,), rule["basis"])
        for rule in data.statements("tubes")
        if rule["topic"] == "load on a tube" and not rule["standing"]
    ]


def _words(given: dict[str, Figure]) -> str:
    """What was reckoned with."""
    said = ["in the middle of the span"]
    said.append(f"{given['bump'].text} times its weight in bumps" if "bump" in given else "standing still")
    if "share" in given:
        said.append(f"{given['share'].text} {given['share'].unit} of the yield strength".replace(" 1 of", " of"))
    return ", ".join(said)


def _sag(
    tube: Bent, shape: dict[str, Figure], given: dict[str, Figure], force: float, words: str, mark: str
) -> list[Figure]:
    """How far the middle goes down under the load; none where the modulus is not known."""
    modulus = modulus_of(tube)
    if modulus is None:
        return []
    down = calc.beam_centre_sag(force, base(given["span"]), base(modulus), base(shape["second_moment"]))
    number = units.from_base(down, tube.unit)
    inputs = (
        given["load"],
        *((given["bump"],) if "bump" in given else ()),
        given["span"],
        modulus,
        shape["second_moment"],
    )
    return [
        tube.derived("beam_centre_sag", "deflection", number, tube.unit, inputs, conditions=words, mark=mark),
        modulus,
    ]


def _judged(part: Figure, allowed: float, given: dict[str, Figure], data: Refdata) -> Check:
    """The share of the yield strength against what is allowed; over all of it the tube bends for good."""
    got, text = Bound(part.typical, "%", figure=part), f"{number_only(part, data)} of the yield strength"
    if part.typical > _PERCENT:
        return Check(NAME, NOT_OK, f"{text}: it bends for good", Bound(float(_PERCENT), "%", "max"), got, bears=STOP)
    if "share" not in given:
        return Check(NAME, OK, text, Bound(float(_PERCENT), "%", "max"), got)
    need = Bound(_PERCENT * allowed, "%", "max", given["share"])
    if part.typical > _PERCENT * allowed * (1 + 1e-9):
        return Check(NAME, NOT_OK, f"{text}, {given['share'].text} % is allowed", need, got, bears=STOP)
    return Check(NAME, OK, f"{text}, {given['share'].text} % is allowed", need, got)


def _asks(given: dict[str, Figure]) -> list[Question]:
    """What must be said before anything is built on it."""
    every = {
        "bump": "How many times its weight does the load come to on the road?",
        "share": "What share of the yield strength is allowed? Who signs for it says.",
    }
    return [Question(FILL_IN, text, key, (key,)) for key, text in every.items() if key not in given]


_LACKS = {"bump": "how hard it is bumped", "share": "what share of yield is allowed"}


def _decided(
    greatest: Figure, part: Figure | None, check: Check | None, asks: list[Question], data: Refdata
) -> Decision:
    """The greatest load, or what the load comes to."""
    lost = [question.key for question in asks]
    still = ", standing still" if "bump" in lost else ""
    if check is not None and check.stops:
        do = f"Too much for this tube: {check.reason}. Take a larger tube, a shorter span, or a stronger metal."
        word = "at most" if not lost else f"bends for good{still}, at" if "share" in lost else f"allowed{still}"
        return stop(VERB, [Candidate(greatest, "", word)], [check.name], do)
    if lost:
        then = f"it begins to bend for good{still}" if "share" in lost else f"that share is reached{still}"
        shown = [Candidate(greatest, then)]
        if part is not None:
            shown.insert(0, Candidate(part, f"of the yield strength, under this load{still}"))
        do = f"Say {' and '.join(_LACKS[key] for key in lost)}, before anything is built on it."
        return ask(VERB, shown, lost, do)
    if part is not None:
        return use("SHARE OF YIELD", part, f"The most that is allowed is {number_only(greatest, data)}.")
    return use(VERB, greatest, "In the middle of the span. Less is borne where it is welded, drilled or bent.")
