"""Parts that have a torque of their own: spark plugs, flare nuts, hose clamps, wheel nuts."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, Check
from gaugeblock.answer.printing import printed
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.fasteners import keys as fastener_keys
from gaugeblock.fasteners.target import maker_torque
from gaugeblock.figure import Figure
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.load import Refdata, canonical, nearest, refdata

TABLE = "fasteners/part_torques"
_QUANTITIES = ("tightening_torque", "turn_from_snug")


def part(
    part: str,
    *,
    size: str | None = None,
    seat: str | None = None,
    material: str | None = None,
    service: str = "vehicle",
    maker: tuple[str, str, str] | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """What to tighten a part to that is not an ordinary bolt.

    ``part``, ``size``, ``seat``, ``material`` are text as people write them (``spark plug``, ``14 mm``, ``gasket``,
    ``aluminium``); ``maker`` the part maker's (torque, source, place), which governs.

    Returns a Sheet: the maker's figure first, else the governing row of this service; rows of another service
    inform and never answer. Where nothing is published the check says so. Raises LookupMiss with the nearest keys
    for a part, size, seat or material that the table does not know.

    >>> part("spark plug", size="14 mm", seat="gasket", material="aluminium").figures[0].text
    '15 to 22'
    """
    data = data or refdata()
    asked = {
        "part": part,
        "size": size,
        "seat": seat,
        "material": material,
        "service": service,
        "maker": maker[0] if maker else None,
    }
    keys = {"part": _part(part, data), "service": lookup.known_service(service)}
    for name, typed in (("size", size), ("seat", seat), ("material", material)):
        if typed is not None:
            keys[name] = _size(typed, keys["part"], data) if name == "size" else typed
        elif _only_not_stated(keys["part"], name, data):
            keys[name] = "not stated"
    title = ", ".join(t for t in (keys["part"], size, seat, material) if t)
    found, miss = _rows(keys, data)
    figures: list[Figure] = []
    checks: list[Check] = []
    cautions: list[Caution] = []
    if maker is not None:
        figures.append(maker_torque(maker))
    figures += found
    if not found:
        if miss is not None and miss.code == "ambiguous":
            checks.append(Check("tightening torque", CANNOT_TELL, f"{miss.why}; name them: {miss.choices}"))
        elif maker is None:
            checks.append(Check("tightening torque", CANNOT_TELL, "no published source: ask the maker"))
        for other in miss.informs if miss is not None else ():
            text = f"Informs only: {printed(other, data)} on {other.key['part']} in {other.key['service']} service ({other.source or other.basis})."
            cautions.append(Caution(text, "note", (other.id,), other.source or "common practice"))
    elif maker is not None and found[0].quantity == "tightening_torque":
        checks.append(_against(figures[0], found[0], data))
    for figure in found:
        apart = lookup.disagreement(figure)
        if apart is not None:
            low, high = (units.significant(v, 3) for v in apart)
            others = tuple(o.id for o in lookup.same_specificity(figure))
            cautions.append(
                Caution(f"Sources disagree: {low} to {high} {figure.unit}.", "note", (figure.id, *others), "refdata")
            )
    cautions += _rules(keys["part"], service, data)
    if figures and figures[0].basis == "common practice":
        cautions.append(
            Caution("Habit, not published: the part maker's figure governs.", "damage", (figures[0].id,), "refdata")
        )
    return Sheet(title, asked, data, figures, checks, cautions)


def _part(typed: str, data: Refdata) -> str:
    """The part's cell; a part that the table does not have is answered: no published source."""
    try:
        return canonical(data, TABLE, "part", typed)
    except LookupMiss as error:
        words = data.words("fasteners", "part")

        def near() -> list[str]:
            pool = {**{w: w for w in words}, **data.table(TABLE).column("part")}
            return list(dict.fromkeys(words.get(n, n) for n in nearest(" ".join(typed.split()), pool, 8)))

        why, do = "no published source for a part of this name", "search the tables with find, or ask the maker"
        raise LookupMiss(error.asked, error.where, why, near, do) from None


def _only_not_stated(part_cell: str, key: str, data: Refdata) -> bool:
    """Whether no row of the part says anything of a key: then leaving it out asks just those rows."""
    cells = {row.cells[key] for row in data.table(TABLE).rows if row.key[0] == part_cell}
    return cells <= {"not stated", "any"} and "not stated" in cells


def _rules(part_cell: str, service: str, data: Refdata) -> list[Caution]:
    """The rules of the tables on this kind of part: those whose topic's words are all in its name."""
    name = part_cell.casefold()
    out = []
    for rule in data.statements("fasteners"):
        about = all(word.rstrip("s") in name for word in rule["topic"].casefold().split())
        if about and rule["service"] in (service, "any") and not rule["standing"]:
            out.append(Caution(rule["statement"], rule["severity"], (), rule["source"] or "common practice"))
    if "brake" in name:
        out.append(
            Caution("Brake work is pressure-tested and checked by another person before the car moves.", "injury")
        )
    return out


def _size(typed: str, part_cell: str, data: Refdata) -> str:
    """The size cell that was typed: as the table has it, as a thread (``1/2-20`` is ``1/2-20 UNF``), or the range it lies in."""
    own = lookup.choices(TABLE, "size", data=data, part=part_cell)
    known = data.table(TABLE).column("size")
    text = " ".join(typed.split()).casefold()
    cell = known.get(text) or data.words("fasteners", "size").get(text)
    if cell is not None and cell in own:
        return cell
    try:
        thread = fastener_keys.thread(typed, data).cell
    except LookupMiss:
        thread = ""
    within = [c for c in own if c.startswith(("to ", "over ")) or " to " in c]
    for found in (
        thread if thread in own else "",
        *(c for c in within if _lies_in(typed, c)),
        cell,
        known.get(thread.casefold()),
    ):
        if found:
            return found
    sizes = [c for c in own if c not in ("any", "not stated")]
    if not sizes:
        return typed
    do = "the figure of another size does not answer: ask the maker"
    raise LookupMiss(typed, f"{part_cell} size", "no published source for this size", sizes, do)


def _lies_in(typed: str, cell: str) -> bool:
    try:
        span = parse_interval(cell)
        measure = units.parse_measure(typed, "length", "size")
    except InputError:
        return False
    return span is not None and span.holds(measure.value * units.factor(measure.unit))


def _rows(keys: dict[str, str], data: Refdata) -> tuple[list[Figure], LookupMiss | None]:
    """The governing figure of each quantity that answers, and why the first one does not."""
    found: list[Figure] = []
    miss: LookupMiss | None = None
    for quantity in _QUANTITIES:
        try:
            found.append(lookup.look_up(TABLE, quantity, data=data, **keys))
        except LookupMiss as error:
            if error.where.split(" ")[-1] in keys and not error.informs and error.code != "ambiguous":
                raise
            if miss is None:
                miss = error
            elif error.informs:
                error.informs = (*miss.informs, *error.informs)
                miss = error
    return found, miss


def _against(maker: Figure, row: Figure, data: Refdata) -> Check:
    """Whether the maker's figure lies in the row's range; outside it the maker still governs, and it is said."""
    low = row.low if row.low is not None else row.typical
    high = row.high if row.high is not None else row.typical
    got = units.from_base(units.to_base(maker.typical, maker.unit), row.unit)
    inside = low * 0.9 <= got <= high * 1.1
    text = f"maker's {printed(maker, data)}; {row.source or 'habit'} {printed(row, data)}"
    if inside:
        return Check("maker's figure beside the table", OK, text)
    weak = row.basis == "common practice" or row.checked == "memory"
    return Check(
        "maker's figure beside the table",
        CANNOT_TELL if weak else NOT_OK,
        f"{text}: over 10 % outside; read the maker's sheet again",
    )
