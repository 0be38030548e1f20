"""The answer ``mitre``: how the slices of a bend that is cut and welded of parts are sawn."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, ask, use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import tubes as calc
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

VERB = "SAW AT"
CUT, SQUARE = ENDS = ("cut", "square")
_NAME = "the two ends"
_LEAST, _MOST, _TURN = 2, 30, 180
_BOTH = 2  # sizes
_WHEN = {
    CUT: "every slice is cut on both faces, the first and the last too",
    SQUARE: "the first and the last are longer pieces, cut on one face alone",
}


def mitre(
    angle: str,
    slices: str,
    *,
    ends: str | None = None,
    od: str | None = None,
    radius: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """At which angle the slices of a bend are sawn, and how long each is outside and inside.

    ``angle`` that they turn in all (``90 deg``); ``slices`` how many pieces (``6``); ``ends`` ``cut`` where every piece
    is cut on both faces, ``square`` where the first and the last are straight pieces that are cut on one; ``od`` of the
    tube and ``radius`` of the bend to its centre line give the lengths of a slice.

    Returns a Sheet whose decision is the angle of the saw from a square cut; both ways, where nobody said what the ends
    are. Raises InputError or UnitError for what cannot be read and for a radius that the tube does not leave. Source:
    elementary geometry, a joint turns twice the saw's angle.

    >>> round(mitre("90 deg", "5", ends="cut").decision.figure.typical, 2)
    9.0
    """
    data = data or refdata()
    asked: dict[str, str | None] = {"angle": angle, "slices": slices, "ends": ends, "od": od, "radius": radius}
    if ends not in (None, *ENDS):
        raise InputError(str(ends), "ends", "no end of a slice is called so", ENDS, "say one of these")
    turn = read_positive(angle, "angle", "angle")
    if turn.to("deg") > _TURN:
        raise InputError(turn.text, "angle", f"a bend of slices turns {_TURN} deg at most", (), "ask for each part")
    count = units.whole_number(slices)
    if count is None or not _LEAST <= count <= _MOST:
        why = f"a bend is made of {_LEAST} to {_MOST} slices"
        raise InputError(slices[:60] or "(blank)", "slices", why, (), "give a whole number")
    title = f"{turn.text} of {slices} slices"
    sizes = {k: read_positive(t, "length", k) for k, t in (("od", od), ("radius", radius)) if t}
    doubts = {
        key: did_you_mean(f"{one.text} is no usual {name.replace('_', ' ')}", ())
        for key, one in sizes.items()
        if not is_plausible(one, name := {"od": "outside_diameter", "radius": "centre_line_radius"}[key], data)
    }
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    if len(sizes) == _BOTH and sizes["radius"].to("mm") * 2 <= sizes["od"].to("mm"):
        why = "the slices would have no inside left: it is no more than half the tube"
        raise InputError(sizes["radius"].text, "radius", why, (), "take a radius of one diameter or more")
    given = stated(turn, "bend_angle", "angle", data)
    key = {name: text for name, text in asked.items() if text}
    ways = {way: _saw(given, count - (way == SQUARE), key, data) for way in (ENDS if ends is None else (ends,))}
    if ends is not None:
        saw = ways[ends]
        lengths = _lengths(saw, sizes, key, data)
        decision = use(VERB, saw, _said(saw, lengths, data))
        return Sheet(title, asked, data, [saw, *lengths, given], [], [], decision=decision)
    check = Check(_NAME, CANNOT_TELL, "whether the ends are cut too was not said", subject="ends", bears=ASK)
    do = "Count the joints that turn: each takes twice the angle of the saw."
    question = Question(FILL_IN, "Are the first and the last piece cut on both faces?", "ends", (_NAME,))
    shown = [Candidate(saw, _WHEN[way], _turns(saw)) for way, saw in ways.items()]
    decision = ask(VERB, shown, (_NAME,), do)
    return Sheet(title, asked, data, [*ways.values(), given], [check], [], decision=decision, questions=[question])


def _turns(saw: Figure) -> str:
    """What a joint turns, as text."""
    return f"each joint turns {2 * saw.typical:.3g} deg"


def _saw(turn: Figure, joints: int, key: dict[str, str], data: Refdata) -> Figure:
    count = stated(units.parse_measure(str(joints), "ratio", "joints"), "mitre_joints", "slices", data)
    number = units.from_base(base(turn) / (2 * joints), "deg")
    return derived("mitre_saw_angle", "mitre_saw_angle", number, "deg", (turn, count), data, key=key)


def _lengths(saw: Figure, sizes: dict[str, units.Measure], key: dict[str, str], data: Refdata) -> list[Figure]:
    """How long a slice is at the outside and at the inside of the bend, where tube and radius were given."""
    if len(sizes) < _BOTH:
        return []
    unit = "in" if sizes["radius"].unit in ("in", "ft") else "mm"
    given = (
        stated(sizes["radius"], "centre_line_radius", "radius", data),
        stated(sizes["od"], "outside_diameter", "od", data),
    )
    middle, half = base(given[0]), base(given[1]) / 2
    return [
        derived(name, name, units.from_base(calc.mitre_slice(at, base(saw)), unit), unit, (*given, saw), data, key=key)
        for name, at in (("mitre_slice_outside", middle + half), ("mitre_slice_inside", middle - half))
    ]


def _said(saw: Figure, lengths: list[Figure], data: Refdata) -> str:
    said = f"From a square cut. {capital(_turns(saw))}."
    if lengths:
        long, short = (number_only(one, data) for one in lengths)
        said += f" A slice is {long} long at the outside and {short} at the inside, before the kerf of the saw."
    return f"{said} Cut a slice of scrap first and look at the joint."
