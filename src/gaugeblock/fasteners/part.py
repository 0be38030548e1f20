"""Parts that have a torque of their own: spark plugs, flare nuts, hose clamps, wheel nuts."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, Check
from gaugeblock.answer.making import stated
from gaugeblock.answer.printing import printed
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, Question
from gaugeblock.answer.sheet import opens
from gaugeblock.answer.unpublished import maker_of, nobody
from gaugeblock.errors import Ambiguous, LookupMiss, Offers
from gaugeblock.fasteners import keys, read
from gaugeblock.fasteners.bolt import Piece
from gaugeblock.fasteners.decide import decide
from gaugeblock.fasteners.draft import CONDITION, Draft
from gaugeblock.fasteners.elsewhere import elsewhere
from gaugeblock.fasteners.open_keys import LIMITS, NO_SIZE, TABLE, open_names, open_ways, rows_of, size_cell
from gaugeblock.fasteners.said import ask_of_maker, ask_of_threads, threads, threads_are
from gaugeblock.fasteners.torque import UNCONFIRMED
from gaugeblock.fasteners.way import Way, exact_way, safer_first, table_way
from gaugeblock.fasteners.wished import wished_ways
from gaugeblock.fasteners.wrench import settings_of, stages_in_words
from gaugeblock.tables.load import Refdata, canonical, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from gaugeblock.answer.asking import Topic
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.fasteners.bolt import CrowFoot
    from gaugeblock.fasteners.maker import Maker
    from gaugeblock.fasteners.wrench import Setting
    from gaugeblock.figure import Figure
    from gaugeblock.job.wrench import WrenchRange

_MOST = 3
_BOLTS = ("bolt", "bolts", "stud", "studs", "capscrew", "capscrews")
HABIT, BESIDE = "a published figure", "maker's figure beside the table"


def _part_topic() -> Topic:
    from gaugeblock.fasteners.asked_part import PART

    return PART


@opens(_part_topic, "part")
def part(
    part: str,
    *,
    size: str | None = None,
    seat: str | None = None,
    material: str | None = None,
    service: str = "vehicle",
    condition: str | None = None,
    locknut: str | None = None,
    prevailing: str | None = None,
    maker: str | Mapping[str, str | None] | Sequence[str] | Maker | None = None,
    wanted: str | None = None,
    wrench: str | WrenchRange | Sequence[str | WrenchRange] | None = None,
    adapter: str | CrowFoot | Mapping[str, str] | None = None,
    confirmed: str | Sequence[str] | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """What to tighten a part to that is not an ordinary bolt.

    ``part``, ``size``, ``seat``, ``material`` are text as people write them (``spark plug``, ``14 mm``, ``gasket``,
    ``aluminium``); ``condition`` how the threads are tightened (``dry``, ``anti-seize``). ``maker``, ``wanted``,
    ``locknut``, ``prevailing``, ``wrench``, ``adapter`` and ``confirmed`` are those of ``torque``.

    Returns a Sheet with its Decision: the maker's figure, else the one wanted, else the governing row of this
    ``service``; rows of another service inform and never answer. Where nothing is published it says so. Raises
    LookupMiss with the nearest keys for a part, size, seat or material that the table does not know.

    >>> part("spark plug", size="14 mm", seat="gasket", material="aluminium").figures[0].text
    '18.0 to 21.6'
    """
    data = data or refdata()
    wish = read.wish(maker, wanted, None, confirmed, data)
    tools = read.tools(locknut, prevailing, adapter, wrench, data)
    named, who = maker_of(part, "fasteners", "part", data)
    piece = Piece(
        named or part_cell(part, data),
        size,
        seat,
        material,
        lookup.known_service(service),
        keys.condition_cell(condition, data) if condition else "",
        tools,
        wish,
    )
    asked = {
        "part": part,
        "size": size,
        "seat": seat,
        "material": material,
        "service": service,
        "condition": condition,
        "locknut": locknut,
        "prevailing": prevailing,
        "wanted": wanted,
        **read.asked_of(tools, wish),
    }
    if named and not wish.is_named:
        near = data.words("fasteners", "related part").get(named, "")
        return nobody(named, who, "TIGHTEN", "torque", asked, data, near)
    try:
        return answer(piece, asked, data)
    except LookupMiss as miss:
        if not wish.is_named and miss.why != NO_SIZE:
            raise
        return unknown(piece, miss, asked, data)  # what somebody names is set, whatever the tables know


def answer(piece: Piece, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """The Sheet of a Piece; as ``part``, of what is read already."""
    at = _keys(piece, data)
    found, miss = rows_of(at, data)
    return _answer(piece, at, found, miss, asked, data)


def unknown(piece: Piece, refused: LookupMiss, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """The Sheet of a part that the tables do not know: a torque that somebody names is set, else its maker is asked."""
    at = {"part": piece.part, "service": piece.service, "size": piece.size or ""} if refused.why == NO_SIZE else {}
    return _answer(piece, at, [], refused, asked, data)


def _keys(piece: Piece, data: Refdata) -> dict[str, str]:
    at = {"part": piece.part, "service": piece.service}
    for name, typed in (("size", piece.size), ("seat", piece.seat), ("material", piece.material)):
        if typed is not None:
            at[name] = (
                size_cell(typed, piece.part, piece.service, data) if name == "size" else _known(name, typed, data)
            )
        elif _only_not_stated(piece.part, name, data):
            at[name] = "not stated"
    return at


def _known(name: str, typed: str, data: Refdata) -> str:
    """A seat or a material that some part has, or a metal that a thread goes into; else LookupMiss.

    A row that is for any seat answers for each of them, and for no word that is none.
    """
    try:
        return canonical(data, TABLE, name, typed)
    except LookupMiss:
        if name == "material" and typed.casefold() in data.words("fasteners", "into"):
            return data.words("fasteners", "into")[typed.casefold()]
        raise


def _answer(
    piece: Piece,
    at: dict[str, str],
    found: list[Figure],
    miss: LookupMiss | None,
    asked: dict[str, str | None],
    data: Refdata,
) -> Sheet:
    draft = Draft(data)
    if piece.has_typed:
        rows = [f for f in found if f.quantity in ("tightening_torque", *LIMITS)][:1]
        rows = rows or [w.figure for w in open_ways(at, miss, data)]
        piece = _without_doubts(piece, rows, draft)
    ways = _ways(piece, at, found, miss, draft)
    ask_of_maker(piece.wish, draft)
    outcomes = _set(piece, at, ways, draft)
    stages = []
    maker = piece.wish.maker
    if maker is not None and not (maker.stages.is_plain and not maker.new_bolts):
        stages = stages_in_words(piece.wish, piece.tools, draft)
    draft.figure(*found)
    _say(piece, found, miss, draft)
    title = ", ".join(t for t in (piece.part, piece.size, piece.seat, piece.material) if t)
    first = tuple(f for _, setting in outcomes for f in setting.steps or (setting.figure,))
    return draft.sheet(title, asked, decide(outcomes, draft, stages), first)


def _without_doubts(piece: Piece, rows: list[Figure], draft: Draft) -> Piece:
    """The part without what is not plausible, which is asked about."""
    from gaugeblock.fasteners import doubt

    doubts = doubt.of_piece(piece, rows, draft.data)
    for one in doubts:
        draft.check(one.check)
        draft.ask(one.question)
    return doubt.piece_without(piece, doubts)


def _ways(piece: Piece, at: dict[str, str], found: list[Figure], miss: LookupMiss | None, draft: Draft) -> list[Way]:
    """The torques that may be the one: the named one, else the table's, else those of the keys that are left open."""
    data, maker = draft.data, piece.wish.maker
    if maker is not None:
        figures = [maker.figure(n) for n, stage in enumerate(maker.stages.steps) if stage.low is not None]
        draft.figure(*figures)
        torques = [
            f for f, s in zip(figures, (s for s in maker.stages.steps if s.low is not None), strict=True) if s.is_torque
        ]
        if found and torques and found[0].quantity == "tightening_torque":
            draft.check(_against(torques[-1], found[0], data))
        if piece.condition and piece.condition != (maker.condition or "dry"):
            ask_of_threads(maker.condition, piece.condition, "part", draft)
        when = threads_are(maker.condition) if maker.condition != piece.condition else ""
        ways = [exact_way(f, when).replace(plus=maker.stages.after) for f in torques[-1:] or figures[:1]]
        return _with_turned(ways, piece, data)
    if piece.wish.wanted is not None:
        want = stated(piece.wish.wanted, "tightening_torque", "wanted", data)
        draft.figure(want)
        rows = found[:1] or [way.figure for way in open_ways(at, miss, data)]
        return wished_ways(want, rows, "wanted" in piece.wish.confirmed, draft)
    if not found:
        ways = _open_keys(at, miss, draft)
        dry = _of_threads(piece, (CONDITION,), draft) if ways else ""
        return [way.replace(when=", and ".join(t for t in (way.when, dry) if t)) for way in ways]
    if found[0].quantity in LIMITS:
        what = LIMITS[found[0].quantity]
        draft.check(Check(HABIT, CANNOT_TELL, f"a limit alone is printed, no torque: {what}", bears=ASK))
        draft.ask(Question(ASK_MAKER, "Ask the part's maker for its torque.", "maker.torque", (HABIT,)))
        return [table_way(found[0], data, "the part's maker names no other", what)]
    when = UNCONFIRMED if any(q.key == "maker.torque" for q in draft.questions) else ""
    names = (CONDITION, HABIT) if found[0].basis == "common practice" else (CONDITION,)
    when = _of_threads(piece, names, draft) or when
    if found[0].basis == "common practice":
        draft.check(Check(HABIT, CANNOT_TELL, "no publication was found: this is what the trade does", bears=ASK))
        if not when:
            text = "Ask the part's maker for its torque."
            if piece.size and at.get("size") == "not stated":
                text = f"Ask the part's maker for its torque: none by the size {piece.size} was found."
            draft.ask(Question(ASK_MAKER, text, "maker.torque", (HABIT,)))
        when = when or "the part's maker says the same, or says nothing"
    return [table_way(found[0], data, when)]


def _of_threads(piece: Piece, names: tuple[str, ...], draft: Draft) -> str:
    """Asks for the torque of threads that are not dry, for which none is printed; the condition of the one that is."""
    if not piece.condition or piece.condition == "dry":
        return ""
    reason = f"the figure is not printed for {threads(piece.condition)}, which may turn easier and clamp harder"
    draft.check(Check(CONDITION, CANNOT_TELL, reason, bears=ASK))
    text = f"Ask the part's maker for the torque of {threads(piece.condition)}, or clean and dry the threads."
    draft.ask(Question(ASK_MAKER, text, "maker.torque", names))
    return "the threads are clean and dry"


def _with_turned(ways: list[Way], piece: Piece, data: Refdata) -> list[Way]:
    """A maker's torque for other threads than these, with what clamps as much here, the safer first; of a part that is
    a bolt or a stud, for on others seat or sealing rub too.
    """
    maker = piece.wish.maker
    is_bolt = piece.part.endswith(_BOLTS) and "wheel" not in piece.part
    if maker is None or not (is_bolt and maker.stages.is_plain and maker.condition and piece.condition):
        return ways
    if maker.condition == piece.condition:
        return ways
    from gaugeblock.fasteners.turned import turned

    here = turned(ways[0].figure, maker.condition, piece.condition, None, data)
    if here is None:
        return ways
    way = exact_way(here, f"{threads_are(piece.condition)}, and the maker names no other torque")
    return safer_first([*ways, way])


def _open_keys(at: dict[str, str], miss: LookupMiss | None, draft: Draft) -> list[Way]:
    """What the part takes for each value of the keys that are left open, the least first; none where no row answers."""
    name = "tightening torque"
    ways = open_ways(at, miss, draft.data)
    if not isinstance(miss, Ambiguous):
        if ways:
            reason = f"{at['size']} says no thread, and the table goes by the thread"
            draft.check(Check(name, CANNOT_TELL, reason, bears=ASK))
            cells = ", ".join(w.when for w in ways)
            draft.ask(Question(FILL_IN, f"Say the thread of the stud: {cells}.", "size", (name,)))
            return ways[:_MOST]
        draft.check(Check(name, CANNOT_TELL, "no published source: ask the maker", bears=ASK))
        text = f"Ask the part's maker for its torque.{elsewhere(at, draft.data)}"
        draft.ask(Question(ASK_MAKER, text, "maker.torque", (name,)))
        return []
    draft.check(Check(name, CANNOT_TELL, f"{miss.why}; name them: {miss.choices}", bears=ASK))
    left_open = [k for k in ("size", "seat", "material") if k not in at]
    names = open_names(miss)
    listed = ", the ".join(names[:-1]) + (" and the " if len(names) > 1 else "") + names[-1]
    text = f"Say the {listed}: each has its own torque." if len(miss.nearest) > 1 else f"Say the {listed}."
    if len(ways) > _MOST:
        text += " Not all of them are shown."
    if not ways:
        text += elsewhere(at, draft.data)
    draft.ask(Question(FILL_IN, text, left_open[0] if left_open else "part", (name,)))
    return ways[:_MOST]


def _set(piece: Piece, at: dict[str, str], ways: list[Way], draft: Draft) -> list[tuple[Way, Setting]]:
    tools = piece.tools
    if any(units.dimension(w.figure.unit) != "torque" for w in ways):
        tools = tools.replace(wrenches=(), adapter=None, prevailing=None, locknut="")
    size = at.get("size", "")
    thread = size if "-" in size or size.startswith("M") else ""
    return settings_of(ways, tools, thread, piece.service, draft)


def _say(piece: Piece, found: list[Figure], miss: LookupMiss | None, draft: Draft) -> None:
    """What informs: figures of other services, sources that disagree, the rules on this kind of part, a habit."""
    data = draft.data
    for other in miss.informs if miss is not None and not found else ():
        text = (
            f"Informs only: {printed(other, data)} on {other.key['part']} in {other.key['service']} service "
            f"({other.source or other.basis})."
        )
        draft.caution(Caution(text, "note", (other.id,), other.source or "common practice"))
    for figure in found:
        apart = lookup.disagreement(figure)
        if apart is not None:
            low, high = (units.significant(v, 3) for v in apart)
            ids = (figure.id, *(o.id for o in lookup.same_specificity(figure)))
            draft.caution(Caution(f"Sources disagree: {low} to {high} {figure.unit}.", "note", ids, "refdata"))
    draft.caution(*_rules(piece.part, piece.service, data))
    first = next(iter(draft.figures.values()), None)
    if first is not None and first.basis == "common practice":
        draft.caution(
            Caution("Habit, not published: the part maker's figure governs.", "damage", (first.id,), "refdata")
        )


def part_cell(typed: str, data: Refdata) -> str:
    """The part's cell; a part that the table does not have is answered: no published source."""
    try:
        return canonical(data, TABLE, "part", typed)
    except LookupMiss as error:
        why, do = "no published source for a part of this name", f"{_where_to_look(typed, data)}, or ask the maker"
        raise LookupMiss(error.asked, error.where, why, lambda: _near_parts(typed, data), do) from None


def _where_to_look(typed: str, data: Refdata) -> str:
    """How to see what there is of the kind that was typed: the bolts, for a seat belt bolt."""
    kind = typed.casefold().split()[-1:]
    is_known = any(p.partition(",")[0].split()[-1:] == kind for p in data.table(TABLE).column("part"))
    return (
        f"`gaugeblock find {kind[0]}` lists what there is of that kind" if is_known else "search the tables with find"
    )


def _near_parts(typed: str, data: Refdata) -> Offers:
    """The parts that are near to what was typed."""
    from gaugeblock.tables.near import offers

    parts = {cell: cell for cell in data.table(TABLE).column("part").values()}
    return offers(typed, {**data.words("fasteners", "part"), **parts}, column="fasteners part", data=data)


def _only_not_stated(part_cell: str, key: str, data: Refdata) -> bool:
    """Whether no row of the part says anything of a key: then leaving it out asks just those rows."""
    cells = {row.cells[key] for row in data.table(TABLE).rows if row.key[0] == part_cell}
    return cells <= {"not stated", "any"} and "not stated" in cells


def _rules(part_cell: str, service: str, data: Refdata) -> list[Caution]:
    """The rules of the tables on this kind of part: those whose topic's words are all in its name."""
    name = part_cell.casefold()
    out = []
    for rule in data.statements("fasteners"):
        about = rule["topic"] != "torque" and all(word.strip("s,") in name for word in rule["topic"].casefold().split())
        if about and rule["service"] in (service, "any") and not rule["standing"]:
            out.append(Caution(rule["statement"], rule["severity"], (), rule["source"] or "common practice"))
    if "brake" in name:
        out.append(
            Caution("Brake work is pressure-tested and checked by another person before the car moves.", "injury")
        )
    return out


def _against(maker: Figure, row: Figure, data: Refdata) -> Check:
    """Whether the maker's figure lies in the row's range; outside it the maker still governs, and it is said."""
    low, high = (units.to_base(e if e is not None else row.typical, row.unit) for e in (row.low, row.high))
    ends = [units.to_base(e, maker.unit) for e in (maker.value, maker.low, maker.high) if e is not None]
    inside = all(low * 0.9 <= e <= high * 1.1 for e in ends)
    text = f"maker's {printed(maker, data)}; {row.source or 'habit'} {printed(row, data)}"
    if inside:
        return Check(BESIDE, OK, text, bears=INFORM)
    weak = row.basis == "common practice" or row.checked == "memory"
    reason = f"{text}: over 10 % outside; read the maker's sheet again"
    return Check(BESIDE, CANNOT_TELL if weak else NOT_OK, reason, bears=INFORM)
