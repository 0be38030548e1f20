"""The answer ``exhaust_joint``: how two pipes, a silencer, a collector or a sensor are joined to a run."""

from __future__ import annotations

from math import ceil

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, OK, Bound, Check, at_least, at_most
from gaugeblock.answer.decision import Candidate, Decision, ask, none, use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import FILL_IN, MEASURE, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.exhaust.statements import cautions
from gaugeblock.lookup import figure_of, look_up, look_up_or_none
from gaugeblock.tables.load import Refdata, canonical, refdata
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Row

TABLE = "exhaust/joints"
TORQUES = "fasteners/part_torques"
VERB = "MAKE"
_ALONE = "a habit alone"
# What was searched for and not found, by kind of joint; "clamp" where one is named.
_NOT_FOUND = {
    "clamp": (
        "no table of clamp torques by the size of the pipe was found: what is printed is for one vehicle or machine"
    ),
    "flange": "no standard size of an exhaust flange, its holes or its torque by the size of the pipe was found",
    "header flange": "header flanges follow the ports of their engine: no standard size was found",
}


class Kind(Value):
    """A way of joining: its part and case in the table, the quantity that decides, what else is said, its fastener."""

    __slots__ = ("case", "more", "part", "quantity", "subjects", "torque", "verb")

    verb: str
    part: str
    case: str
    quantity: str
    more: tuple[tuple[str, str], ...]
    torque: str
    subjects: tuple[str, ...]

    def __init__(
        self,
        verb: str,
        part: str,
        case: str,
        quantity: str,
        more: Sequence[tuple[str, str]] = (),
        torque: str = "",
        subjects: Sequence[str] = (),
    ) -> None:
        put(self, "verb", verb)
        put(self, "part", part)
        put(self, "case", case)
        put(self, "quantity", quantity)
        put(self, "more", tuple(more))
        put(self, "torque", torque)
        put(self, "subjects", tuple(subjects))


_SLIP = (("any", "overlap_minimum"),)
KINDS = {
    "slip joint": Kind(
        "MAKE THE SOCKET",
        "slip joint",
        "socket over pipe",
        "socket_clearance",
        _SLIP,
        "exhaust clamp, general",
        ("band clamp",),
    ),
    "sliding joint": Kind(
        "MAKE THE SOCKET",
        "slip joint",
        "sliding, at a header collector",
        "socket_clearance",
        _SLIP,
        "",
        ("fixed point",),
    ),
    "butt weld": Kind("FIT WITHIN", "butt weld", "thin tube", "weld_gap_maximum", subjects=("welding near a sensor",)),
    "mitre": Kind("TURN AT MOST", "mitre", "pie cut", "mitre_angle_maximum", subjects=("welding near a sensor",)),
    "collector": Kind("TAPER", "collector", "any", "collector_angle", torque="exhaust pipe flange nut"),
    "balance pipe": Kind("SIZE", "balance pipe", "any", "balance_pipe_share"),
    "sensor boss": Kind(
        "PLACE",
        "oxygen sensor",
        "boss",
        "sensor_distance",
        (("wideband", "mounting_angle_minimum"),),
        "oxygen sensor",
        ("oxygen sensor place", "welding near a sensor"),
    ),
    "flange": Kind("TIGHTEN", "", "", "", torque="exhaust pipe flange nut, front pipe", subjects=("flange gasket",)),
    "header flange": Kind(
        "TIGHTEN", "", "", "", torque="exhaust manifold bolt", subjects=("flange gasket", "header bolts")
    ),
}
_WORDS = {
    "slip fit": "slip joint",
    "slip": "slip joint",
    "expanded end": "slip joint",
    "socket": "slip joint",
    "clamp": "slip joint",
    "header slip": "sliding joint",
    "weld": "butt weld",
    "miter": "mitre",
    "pie cut": "mitre",
    "pie cuts": "mitre",
    "x pipe": "balance pipe",
    "h pipe": "balance pipe",
    "crossover": "balance pipe",
    "o2 sensor": "sensor boss",
    "oxygen sensor": "sensor boss",
    "bung": "sensor boss",
    "sensor bung": "sensor boss",
    "sensor": "sensor boss",
    "gasket": "flange",
    "header bolts": "header flange",
    "header": "header flange",
    "manifold": "header flange",
}
FACTS = ("socket", "overlap")
_READ = {
    "od": ("length", "exhaust_pipe_od"),
    "wall": ("length", "tube_wall"),
    "socket": ("length", "socket_inside_diameter"),
    "overlap": ("length", "overlap_minimum"),
    "angle": ("angle", "bend_angle"),
}


def kind_of(typed: str) -> str:
    """The kind of joint that was typed; LookupMiss with the nearest."""
    said = " ".join(typed.casefold().replace("-", " ").split())
    if said in KINDS or said in _WORDS:
        return _WORDS.get(said, said)
    from gaugeblock.tables.near import nearest

    near = list(dict.fromkeys(_WORDS.get(n, n) for n in nearest(said, [*KINDS, *_WORDS], 5)))
    raise LookupMiss(
        typed[:60], "kind", "no joint of an exhaust that is known", near or list(KINDS)[:5], "use one of these"
    )


def exhaust_joint(
    kind: str,
    *,
    od: str | None = None,
    wall: str | None = None,
    socket: str | None = None,
    overlap: str | None = None,
    angle: str | None = None,
    tried: str | None = None,
    clamp: str | None = None,
    fact: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """How a joint of an exhaust is made: socket and overlap, weld gap, mitre, collector, balance pipe, boss, flange.

    Parameters are text as people write them: ``kind`` (``slip joint``, ``sliding joint``, ``butt weld``, ``mitre``,
    ``collector``, ``balance pipe``, ``sensor boss``, ``flange``, ``header flange``); ``od`` and ``wall`` of the pipe;
    ``socket`` the inside diameter and ``overlap`` as they are; ``angle`` that a mitred bend turns in all; ``tried``
    how it was found tight; ``clamp`` the kind that holds it (``V-band``, ``band clamp``); ``fact`` what is wanted first
    of a slip joint: ``socket`` (which it is where nothing is asked) or ``overlap``.

    Returns a Sheet; most of it is habit, so it asks. Raises InputError, LookupMiss or UnitError for what cannot be
    read.

    >>> round(exhaust_joint("slip joint", od="2-1/2 in").figure("socket_inside_diameter").low, 3)
    2.51
    """
    data = data or refdata()
    asked = {
        "kind": kind,
        "od": od,
        "wall": wall,
        "socket": socket,
        "overlap": overlap,
        "angle": angle,
        "tried": tried,
        "clamp": clamp,
        "fact": fact,
    }
    if fact is not None and fact not in FACTS:
        raise InputError(fact, "fact", "nothing of a joint is called so", FACTS, "ask for one of these")
    name = kind_of(kind)
    return judged(name, asked, data)


def judged(name: str, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``exhaust_joint``, of a kind that was read."""
    of = KINDS[name]
    read = {
        key: stated(read_positive(typed, dim, key), quantity, key, data)
        for key, (dim, quantity) in _READ.items()
        if (typed := asked.get(key))
    }
    title = f"exhaust {name}" + (f", {read['od'].text} {read['od'].unit}" if "od" in read else "")
    odd = list(_odd(read, data))
    if odd:
        checks = [Check(f"{q.key} as typed", CANNOT_TELL, q.text, bears=ASK) for q in odd]
        decision = none(of.verb, odd[0].text)
        return Sheet(title, asked, data, list(read.values()), checks, [], decision=decision, questions=odd)
    main, more = _figures(of, read, data)
    lap = next((f for f in more if f.quantity == "overlap_minimum"), None)
    if asked.get("fact") == FACTS[1] and lap is not None:
        main, more = [lap], [*main, *(f for f in more if f is not lap)]
    held = clamp_torques(asked["clamp"], data) if asked.get("clamp") else []
    more = [*[f for f in more if not held or f.quantity != "tightening_torque"], *held]
    checks, questions = _checked(read, main, more, data)
    open_check = _tried(of, asked.get("tried"))
    if open_check.asks:
        text = "Try both parts together and look for leaks before it is run; write down how it was found tight."
        questions.append(Question(MEASURE, text, "tried", (open_check.name,)))
    decision = _decided(of, main, more, [*checks, open_check])
    for key in ("clamp" if asked.get("clamp") else "", name):
        if why := _NOT_FOUND.get(key):
            checks.append(Check(f"sizes and torques: {key}", CANNOT_TELL, why, bears=INFORM))
    figures = [*decision.figures, *main, *more, *read.values()]
    bounds = [b.figure for c in checks for b in (c.required, c.actual) if b is not None and b.figure is not None]
    told = cautions(data, ("exhaust",), (*of.subjects, "carbon monoxide"))
    told += [_informs(f, data) for f in held if f.key.get("service") not in ("vehicle", "any")]
    listed = list({f.id: f for f in (*figures, *bounds)}.values())
    return Sheet(title, asked, data, listed, [*checks, open_check], told, decision=decision, questions=questions)


def _informs(figure: Figure, data: Refdata) -> Caution:
    """The torque of a clamp on another machine, or on one vehicle: it informs."""
    part = figure.key["part"]
    text = f"{capital(part)}: {number_only(figure, data)} ({figure.key['service']}); its maker's governs."
    return Caution(text, "note", (figure.id,), figure.source or figure.basis)


def _tried(of: Kind, tried: str | None) -> Check:
    """A habit asks until the shop has tried the joint and says how."""
    if tried:
        return Check(_ALONE, OK, f"tried here: {tried}", bears=INFORM)
    return Check(_ALONE, CANNOT_TELL, _open(of), bears=ASK)


def _open(of: Kind) -> str:
    if not of.part:
        return "the makers of vehicles differ; the maker of this joint says its own torque"
    return "no published figure for cars was found"


def _odd(read: dict[str, Figure], data: Refdata) -> list[Question]:
    out = []
    for key, figure in read.items():
        measure = read_positive(f"{figure.text} {figure.unit}", _READ[key][0], key)
        if not is_plausible(measure, figure.quantity, data):
            span = plausible_range(figure.quantity, data)
            meant = other_readings(measure, *span) if span else ()
            said = did_you_mean(f"{measure.text} is no usual {key} of an exhaust joint", meant)
            out.append(Question(FILL_IN, said, key, (f"{key} as typed",)))
    return out


def _figures(of: Kind, read: dict[str, Figure], data: Refdata) -> tuple[list[Figure], list[Figure]]:
    """The figure that decides, then what else belongs to it."""
    main: list[Figure] = []
    more: list[Figure] = []
    if of.part:
        figure = look_up(TABLE, of.quantity, data=data, part=of.part, case=of.case)
        main.append(figure)
        if of.quantity == "socket_clearance" and "od" in read:
            main = [_socket(read["od"], figure, data)]
            more.append(figure)
        if of.quantity == "weld_gap_maximum" and "wall" in read:
            main.append(_half(read["wall"], data))
        if of.quantity == "balance_pipe_share" and "od" in read and "wall" in read:
            more.append(_bore(read, data))
        if of.quantity == "mitre_angle_maximum" and "angle" in read:
            more.append(_cuts(read["angle"], figure, data))
    for case, quantity in of.more:
        found = look_up_or_none(TABLE, quantity, data=data, part=of.part, case=case)
        more += [] if found is None else [found]
    more += [f for r in _others(of, data) if (f := figure_of(r, data)) not in more]
    if of.torque:
        torque = look_up_or_none(TORQUES, "tightening_torque", data=data, part=of.torque, size="not stated")
        if torque is not None:
            (more if of.part else main).append(torque)
    return main, more


def clamp_torques(typed: str | None, data: Refdata) -> list[Figure]:
    """The torques of a kind of clamp, whatever they are of: those of vehicles first; LookupMiss for no such kind."""
    part = canonical(data, TORQUES, "part", typed or "")
    rows = [r for r in data.table(TORQUES).of("tightening_torque") if r["part"] == part and not r["standing"]]
    rows.sort(key=lambda r: (r["service"] not in ("vehicle", "any"), r["service"], r.line))
    return [figure_of(r, data) for r in rows]


def _others(of: Kind, data: Refdata) -> list[Row]:
    """What else the table says of the part for one vehicle: it informs."""
    rows = data.table(TABLE).by_quantity
    wanted = ("overlap_minimum", "clamp_distance_from_end") if of.part == "slip joint" else ()
    return [r for q in wanted for r in rows.get(q, []) if r["part"] == of.part and r["service"] == "one vehicle"]


def _socket(od: Figure, clearance: Figure, data: Refdata) -> Figure:
    def of(number: float | None) -> float | None:
        return None if number is None else units.from_base(base(od) + units.to_base(number, clearance.unit), od.unit)

    ends = (of(clearance.low), of(clearance.high))
    return derived("socket_inside_diameter", "socket_inside_diameter", None, od.unit, (od, clearance), data, ends=ends)


def _half(wall: Figure, data: Refdata) -> Figure:
    number = units.from_base(base(wall) / 2, wall.unit)
    return derived("weld_gap_of_wall", "weld_gap_maximum", number, wall.unit, (wall,), data)


def _bore(read: dict[str, Figure], data: Refdata) -> Figure:
    number = units.from_base(base(read["od"]) - 2 * base(read["wall"]), read["od"].unit)
    return derived("exhaust_bore", "pipe_bore", number, read["od"].unit, (read["od"], read["wall"]), data)


def _cuts(angle: Figure, most: Figure, data: Refdata) -> Figure:
    """How many mitres make a turn."""
    count = float(ceil(base(angle) / base(most) * (1 - 1e-9)))
    return derived("mitre_cuts", "mitre_cuts", count, "1", (angle, most), data)


def _checked(
    read: dict[str, Figure], main: Sequence[Figure], more: Sequence[Figure], data: Refdata
) -> tuple[list[Check], list[Question]]:
    """What was given against what is usual."""
    checks: list[Check] = []
    socket = next((f for f in main if f.quantity == "socket_inside_diameter" and f.basis == "derived"), None)
    if socket is not None and "socket" in read:
        actual = Bound(units.from_base(base(read["socket"]), socket.unit), socket.unit, figure=read["socket"])
        least, most = socket.low or 0.0, socket.high or 0.0
        said = f"the socket is {number_only(read['socket'], data)}, usual is {number_only(socket, data)}"
        checks.append(
            at_least("socket not too tight", actual, Bound(least, socket.unit, "min", socket), said, bears=ASK)
        )
        checks.append(at_most("socket not too wide", actual, Bound(most, socket.unit, "max", socket), said, bears=ASK))
    overlap = next((f for f in (*main, *more) if f.quantity == "overlap_minimum"), None)
    if overlap is not None and "overlap" in read:
        actual = Bound(units.from_base(base(read["overlap"]), overlap.unit), overlap.unit, figure=read["overlap"])
        own = read["overlap"]
        said = f"the overlap is {number_only(own, data)}, the habit is {number_only(overlap, data, own.unit)}"
        need = Bound(overlap.typical, overlap.unit, "min", overlap)
        checks.append(at_least("overlap", actual, need, said, bears=ASK))
    questions = [
        Question(FILL_IN, f"Make it anew: {c.reason}.", "overlap" if c.name == "overlap" else "socket", (c.name,))
        for c in checks
        if c.asks
    ]
    return checks, questions


def _decided(of: Kind, main: Sequence[Figure], more: Sequence[Figure], checks: Sequence[Check]) -> Decision:
    asks = [c for c in checks if c.asks]
    shown = sorted(main, key=lambda f: units.to_base(f.high or f.typical, f.unit))
    cuts = next((f for f in more if f.quantity == "mitre_cuts"), None)
    then = f"{cuts.typical:.0f} cuts make the turn" if cuts is not None else "checked for leaks before it is run"
    candidates = [Candidate(f, f.conditions.split(";")[0] or "as usual", then) for f in shown]
    if not asks:
        return use(of.verb, shown[0], "Habit, tried in this shop.")
    first = next((c for c in asks if c.name != _ALONE), asks[0])
    do = f"{capital(first.reason)}."
    return ask(of.verb, candidates, [c.name for c in asks], do)
