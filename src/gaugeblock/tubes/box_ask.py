"""What is asked about a square or rectangular tube, as people say it."""

from __future__ import annotations

import re

from gaugeblock import units
from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount
from gaugeblock.errors import InputError
from gaugeblock.tubes.said import is_without_metal

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Open
    from gaugeblock.tables.load import Refdata

_UNIT = r'(?: ?(?P<u{0}>mm|in|ins|inch(?:es)?|"))?'
_IN = r'(?:in|ins|inch(?:es)?|")'
_BY = r" ?(?:x|by|times) ?"
_LEAST_MM = 15  # a bare side of more is in millimetres: no car has so many inches
_WALLS_IN = (".065 in", ".083 in", ".120 in", "3/16 in", "1/4 in")
_WALLS_MM = ("1.6 mm", "2 mm", "3 mm", "4 mm", "5 mm")
_MOST_WALL = 13  # mm
_WALL = r"(?:wall(?: thickness)?|thick|w)"
_SQUARE = r"(?:square|sq|box)(?: section)?(?: tub(?:e|ing))?"


def _sides(match: re.Match[str]) -> str | None:
    """``2x2x1/8``, ``40 x 40 x 3``, ``2 inch square``."""
    said = match.groupdict()
    if said["a2"]:  # 2x2 1/8 wall
        return f"{said['a2']} x {said['b2']} x {said['w2']} in"
    first = said["a"] or said["s"]
    if said["b"] and not said["w"] and (re.match(r"0?\.[0-2]", said["b"]) or _is_a_wall(first, said["b"])):
        return None  # a round tube and its wall: no box has so short a side
    wall = said["w"] or said["t"]
    numbers = [first, said["b"] or first, *([wall] if wall else [])]
    unit = next((u for u in (said["u1"], said["u2"], said["u3"], said["u4"]) if u), "")
    if not unit:
        is_whole = first.isdigit() and numbers[1].isdigit()
        unit = "mm" if is_whole and _is_in_mm([int(n) for n in numbers[:2]]) else "in"
    if unit == "mm" and min(float(units.parse_number(n)) for n in numbers[:2]) < _LEAST_SIDE:
        return None  # a sheet in metres: 1.2 x 2.4 x 3 mm
    return f"{' x '.join(n.replace('-', ' ') for n in numbers)} {'mm' if unit == 'mm' else 'in'}"


def _square(match: re.Match[str]) -> str | None:
    """``30 mm x 1.5 box``: a square box and its wall, where the second can be no side."""
    side, wall = match["s"], match["t"]
    if not _is_a_wall(side, wall):
        return None
    unit = match["u1"] or match["u2"] or ("mm" if side.isdigit() and int(side) >= _LEAST_MM else "in")
    return f"{side} x {side} x {wall} {'mm' if unit == 'mm' else 'in'}".replace("-", " ")


def _is_a_wall(first: str, second: str) -> bool:
    """Whether the second of two numbers can only be the wall of a round tube: 48 x 3."""
    return float(units.parse_number(first)) > _FLATTEST * float(units.parse_number(second))


_FLATTEST = 6  # times as wide as it is high
_MOST_INCHES = 30
_LEAST_SIDE = 5  # mm


def _is_in_mm(sides: list[int]) -> bool:
    """Whether two bare sides are in millimetres."""
    return min(sides) >= _LEAST_MM or max(sides) >= _MOST_INCHES


_STANDS = (
    Shaped(
        r"(?:(?:st[o]od|standing|stands|set|put|up|used|turned|is|it|mounted) )*(?:(?:up )?on (?:its |the )?(?:edge"
        r"|end)"
        r"(?! of)|edgeways|edgewise|on its side edge|(?:st[o]od )?upright|tall way(?: up)?|the tall way"
        r"|(?:the )?(?:tall|long|deep|big|wide) (?:side|way|one) (?:is )?(?:up|upright|vertical))",
        always("edge"),
        "stood on edge",
        cue=("edge", "end", "upright", "tall", "long", "deep", "big", "wide"),
    ),
    Shaped(
        r"(?:(?:laid|l[y]ing|lays|lies|set|put|used|turned|is|it|mounted) )*(?:down )?(?:(?:on the )?flat(?! (?:bar"
        r"|plate"
        r"|length|sheet))(?: ?ways?| side| down)?|(?:the )?(?:short|small) (?:side|way|one) (?:up|upright|vertical))",
        always("flat"),
        "laid flat",
        cue=("flat", "short", "small"),
    ),
)


_OPEN = (
    Shaped(
        r"(?:an? |the )?(?P<n>(?:c |u |parallel flange )?channels?|angles?(?: iron)?(?! (?:of|is|at|for|on|to|between))"
        r"|[ihut][ -]?(?:b[e]ams?|sections?)|rsj|tee section|flat bar|round bar|solid bar|top hat)",
        lambda m: m["n"],
        "{}",
        cue=("channel", "angle", "beam", "section", "rsj", "tee", "bar", "hat"),
    ),
)


def _closed(values: dict[str, str]) -> dict[str, str]:
    """InputError for an angle or a channel: it is no box."""
    if "shape" in values:
        why = "it is no closed box, and no table here has its section"
        raise InputError(values["shape"], "size", why, (), "take it from its maker's table")
    return values


def _turned(values: dict[str, str]) -> dict[str, str]:
    """The sides in their order, the upright one first, where it was said how the box stands."""
    stands = values.get("stands")
    found = {key: value for key, value in values.items() if key != "stands"}
    if stands is None or "size" not in values:
        return found
    sizes, _, unit = values["size"].rpartition(" ")
    sides = sizes.split(" x ")
    first = sorted(sides[:2], key=units.parse_number, reverse=stands == "edge")
    return {**found, "size": f"{' x '.join([*first, *sides[2:]])} {unit}"}


def _sized() -> tuple[Shaped, ...]:
    one, two, three, four = (_UNIT.format(n) for n in (1, 2, 3, 4))
    more = rf"(?:{_BY}(?P<w>{NUMBER}){three}(?: {_WALL})?)?"
    pattern = (
        rf"(?P<a2>[0-9]+){_BY}(?P<b2>[0-9]+) (?P<w2>[0-9]+/[0-9]+|0?\.[0-9]+)(?: ?{_IN})? {_WALL}(?:"
        rf" (?:box|{_SQUARE}))?|"
        rf"(?P<a>{NUMBER}){one}{_BY}(?P<b>{NUMBER}){two}{more}(?: (?:box|rectang\w+|rect?(?: tub(?:e|ing))?"
        rf"|{_SQUARE}))?"
        rf"|(?P<s>{NUMBER}){four}(?: (?:x |by )?(?P<t>0?\.[0-9]+)(?: ?{_IN})?(?: {_WALL})?)? {_SQUARE}"
    )
    walled = rf"(?P<s>{NUMBER}){one} ?(?:x|by) ?(?P<t>{NUMBER}){two}(?: {_WALL})? (?:{_SQUARE}|shs)"
    behind = (
        rf"(?P<a>[0-9]{{2,3}})(?: ?mm)? ?(?:x|by) ?(?P<b>[0-9]{{2,3}})(?: ?mm)? (?:box|[sr]hs|rect\w*"
        rf"|{_SQUARE})(?: section)?"
        r" (?P<w>[1-6](?:\.[0-9])?) ?mm(?: wall)?(?! (?:long|x|by))"
    )
    return (
        Shaped(walled, _square, cue=("square", "sq", "box", "shs")),
        Shaped(behind, lambda m: f"{m['a']} x {m['b']} x {m['w']} mm", cue=("mm",)),
        Shaped(pattern, _sides),
    )


def _open(values: dict[str, str], data: Refdata) -> Open | None:
    """The usual walls where none was said; a shop's metals where the mass is asked and none was named."""
    open_keys: list[str] = []
    rows: list[dict[str, str]] = [{}]
    if "wall" not in values and values["size"].count(" x ") == 1:
        open_keys.append("wall")
        rows = [{"wall": wall} for wall in (_WALLS_IN if values["size"].endswith("in") else _WALLS_MM)]
    if values.get("fact") == "mass" and is_without_metal(values.get("material", ""), data):
        open_keys.append("material")
        rows = [{**row, "material": metal} for row in rows for metal in ("1020 DOM", "304", "6061")]
    return (tuple(open_keys), rows) if open_keys else None


def topic(section: Topic) -> Topic:
    """The topic of a box, with the words of a round tube's section."""
    from gaugeblock.tubes.said import answer_in

    slots = {
        "size": _sized(),
        "wall": (*section.slots["wall"], amount("length", after="wall(?: thickness)?", say="{} wall", most=_MOST_WALL)),
        "stands": _STANDS,
        "shape": _OPEN,
        **{k: section.slots[k] for k in ("length", "fact")},
        "material": section.slots["material"],
    }
    return Topic(
        lambda: answer_in("box", "box"),
        "box section",
        slots,
        section.signals
        + rf"|both(?= (?:(?:with|are|in|have|being|made|out|of) )*[0-9./]+ ?(?:mm|in|inch)? {_WALL})|box(?:es)?"
        rf"|square|rectang(?:le|ular)|rect?|shs|rhs|hss|{_WALL}|steel|sections?",
        needs=("size",),
        settle=lambda values, data: _turned(section.settle(_closed(values), data) if section.settle else values),
        opens=_open,
        joined=("material",),
        columns=section.columns,
        asks_for=r"box|square|sq|rect\w*|shs|rhs|hss|[0-9./]+ ?(?:mm|in)? (?:x|by) [0-9./]+ ?(?:mm|in)? (?:x|by)"
        r" [0-9./]+",
        is_named=True,
        unmoved="finish state standard service quality",
    )
