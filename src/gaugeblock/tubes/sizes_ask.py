"""How the sizes of a tube are said: its metal, its outside diameter, its wall, the radius of its die."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.asking import NUMBER, Hit, Shaped, always
from gaugeblock.answer.patterns import compiled
from gaugeblock.errors import InputError
from gaugeblock.tubes import keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Iterable

    from gaugeblock.tables.load import Refdata

DEGREES = r"(?:deg(?:rees?)?|\u00b0)"
IN = r"(?: ?(?:inch(?:es)?|in|\"))"
GAUGE = r"gauge|gage|ga|guage"
UNIT = rf"(?: ?(?:mm|millimet(?:re|er)s?)|{IN})?"


class Stock:
    """Reader of a tube's metal: family, grade, product and condition, one phrase after another."""

    def phrases(self, data: Refdata) -> dict[str, str]:
        """The phrases of tubes, as ``Named`` has them."""
        return {p.casefold(): p for p in keys.phrases(data)}

    def choices(self, _data: Refdata) -> tuple[str, ...]:
        """None: what stands in a row makes more than any list."""
        return ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """As many phrases as stand in a row."""
        known = keys.phrases(data)
        end = at
        while end < len(words):
            step = next(
                (n for n in range(5, 0, -1) if " ".join(words[end : end + n]) in known and end + n <= len(words)), 0
            )
            if not step:
                break
            end += step
        if end > at:
            yield Hit(end - at, " ".join(words[at:end]))


STOCK = Stock()
MILD = Shaped(r"mild(?! steel)", always("mild steel"), cue=("mild",))


def _inch(match: re.Match[str]) -> str | None:
    said = match.groupdict()
    number = said["n"]
    is_bare = not said["mm"] and not said["in"] and number.replace(".", "", 1).isdigit()
    if is_bare and len(number) > _MOST_DIGITS and number.isdigit():
        return None  # a steel, and no radius
    unit = "mm" if said["mm"] or (is_bare and float(number) > _LARGEST_DIE) else "in"
    return f"{number} {unit}{' inside' if said.get('inside') else ''}"


def _no_angle(match: re.Match[str]) -> str | None:
    """A radius; a bare number behind the word that is an everyday angle is that: 5 inch radius 90."""
    is_bare = not (match["in"] or match["mm"] or match["is"] or match["inside"])
    return None if is_bare and match["n"] in EVERYDAY_ANGLES else _inch(match)


EVERYDAY_ANGLES = frozenset(["15", "30", "45", "60", "75", "90", "120", "135", "150", "180"])
_MOST_DIGITS = 3
# No shop has a die of so many inches: a larger number without a unit is millimetres.
_LARGEST_DIE = 16


def _bare_od(match: re.Match[str]) -> str | None:
    number = match["n"]
    if match["mm"]:
        return f"{number} mm" if "/" in number or float(number) >= _LEAST_MM else None
    if "." in number and float(number) > _MOST_INCHES and not match["in"]:
        return f"{number} mm"  # no shop bends a tube of so many inches
    if match["in"] and number.isdigit() and int(number) > _MOST_INCHES:
        return None  # a leg, and no tube
    if match["in"] or "/" in number or ("." in number and not number.startswith((".", "0."))):
        return f"{number} in"
    return None


def _wall(match: re.Match[str]) -> str | None:
    number = match["n"]
    if match["mm"]:
        return f"{number} mm"
    if number.isdigit():  # "120 wall" is .120 in thousandths
        return f".{number} in" if len(number) == 3 else None
    return f"{number} in" if float(number) < 1 else f"{number} mm" if float(number) < _MOST_INCHES else None


_MOST_INCHES = 12
_LEAST_MM = 3.5  # a length of less is a wall, and no tube
OD = (
    Shaped(
        rf"(?P<n>{NUMBER})(?:(?P<in>{IN})| ?(?P<mm>mm))?(?: ?(?:od|o\.d|outside diameter|outside|dia(?:meter)?))?",
        _bare_od,
        "{} OD",
    ),
    Shaped(r"(?P<n>[1-9])(?= (?:(?:x|by) )?0?\.[0-3][0-9]*(?: |$))", lambda m: f"{m['n']} in", "{} OD", doubt=1),
    Shaped(
        r"(?P<n>[0-9]{1,3}) (?:od|o\.d|outside(?: diameter)?)",
        lambda m: f"{m['n']} {'mm' if int(m['n']) > _MOST_INCHES else 'in'}",
        "{} OD",
    ),
    Shaped(
        r"(?P<n>[1-9][0-9]{1,2})(?= (?:x|by) [1-9](?:\.[0-9]+)?(?: |$))", lambda m: f"{m['n']} mm", "{} OD", doubt=1
    ),
)
_THICKEST = 160  # mm: no tube on a bender is thicker


def _od_of_tube(match: re.Match[str]) -> str | None:
    """A diameter that a tube can have: not the leg beside a bend, nor the degrees of one."""
    said = _bare_od(match)
    number, _, unit = (said or "0 in").rpartition(" ")
    size = float(units.parse_number(number))
    is_said = match["in"] or match["mm"] or not match[0].rpartition(" ")[2][:1].isdigit()
    if unit == "mm" and not is_said:
        return None  # 57.5 may be degrees
    return said if said and size * (1 if unit == "mm" else 25.4) <= _THICKEST else None


OD_OF_TUBE = (
    Shaped(
        rf"(?P<n>{NUMBER})(?:(?P<in>{IN})| ?(?P<mm>mm))?(?: ?(?:od|o\.d|outside diameter|outside|dia(?:meter)?))?"
        r"(?! (?:of )?(?:straight|legs?|arms?|sides?|ends?|tails?|between|apart|across|long|wide|lengths?))",
        _od_of_tube,
        "{} OD",
    ),
    *OD[1:],
)
WALLS = (
    Shaped(
        rf"(?:x |by )?(?P<n>0?\.[0-9]+)(?:{IN}| ?(?P<mm>mm))?(?: ?(?:wall(?: thickness)?|thick|w))?", _wall, "{} wall"
    ),
    Shaped(rf"(?:x |by )?(?P<n>[0-9.]+)(?:{IN}| ?(?P<mm>mm))? (?:wall(?: thickness)?|thick)", _wall, "{} wall"),
    Shaped(r"(?:x |by )?(?P<n>[1-9]) (?:wall(?: thickness)?|thick)", lambda m: f"{m['n']} mm", "{} wall"),
    Shaped(
        rf"(?:x |by |with |and )*(?:an? )?(?P<n>[0-9]+/[0-9]+)(?:{IN})? (?:wall(?: thickness)?|thick)",
        lambda m: f"{m['n']} in",
        "{} wall",
    ),
    Shaped(
        r"wall (?:of |is )?(?P<n>0?\.[0-9]+|[0-9.]+(?= ?mm))(?: ?(?:in|inch|\")| ?(?P<mm>mm))?",
        _wall,
        "{} wall",
        doubt=1,  # 3 mm wall, 50 mm tube
    ),
    Shaped(
        rf"(?:x |by )?(?P<n>[0-9]{{1,2}}) ?(?:{GAUGE}|bwg)(?: wall)?(?: bwg)?",
        lambda m: f"{m['n']} BWG",
        "{} wall",
        doubt=2,
    ),
)
_THOUSANDTHS = Shaped(r"(?:x |by )?(?P<n>0[0-9]{2})(?: wall)?", lambda m: f".{m['n']} in", "{} wall")
_MM_WALL = Shaped(
    r"(?:x|by) ?(?P<n>[0-9](?:\.[0-9]+)?)(?: ?(?P<mm>mm))?(?: wall)?",
    lambda m: _wall(m) or f"{m['n']} mm",
    "{} wall",
    doubt=1,
)


class Imperial:
    """A wall by the imperial standard gauge, as it stands in the tables: 18 swg."""

    __slots__ = ("doubt",)

    def __init__(self) -> None:
        self.doubt = 0

    def phrases(self, _data: Refdata) -> dict[str, str]:
        """None: it is a number."""
        return {}

    def choices(self, _data: Refdata) -> tuple[str, ...]:
        """None: it is a number."""
        return ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """The wall of the gauge, told with its number."""
        start = at + (words[at] in ("x", "by"))
        found = compiled(r"(?P<n>[0-9]{1,2}) ?(?:swg|s\.w\.g)(?: wall)?(?= |$)").match(
            " ".join(words[start : start + 3])
        )
        if found is None:
            return
        for row in data.table("tubes/gauges").of("wall_thickness"):
            if row["system"] == _SWG and row["gauge"] == found["n"] and not row["standing"]:
                yield Hit(
                    start - at + found[0].count(" ") + 1,
                    f"{row['value']} {row['unit']}",
                    f"{row['value']} {row['unit']} wall, {found['n']} SWG",
                )
                return


_SWG = "SWG (British)"
EVERY_WALL = (Imperial(), *WALLS, _MM_WALL, _THOUSANDTHS)
RADIUS = (
    Shaped(  # bent on 4.5
        rf"(?:on|round|around)(?: an?)? (?P<n>{NUMBER})(?:(?P<in>{IN})| ?(?P<mm>mm))?(?= *$| (?:what|how|ok"
        rf"|okay|will)\b)",
        _inch,
        "radius {}",
        doubt=1,
        cue=("on ", "round "),
    ),
    Shaped(
        rf"(?:on |with |in |using |round |around )?(?:an? |my |the )?(?P<n>{NUMBER})(?:(?P<in>{IN})| ?(?P<mm>mm))?"
        r"(?: radius| clr| centre ?line| center ?line)?(?= (?:die|former|shoe))",
        _inch,
        "radius {}",
    ),
    Shaped(
        rf"(?:on |to |at |round |around )?(?:an? )?(?P<n>{NUMBER})(?:(?P<in>{IN})| ?(?P<mm>mm))?"
        r" ?(?:clr|cent(?:re|er)[ -]?line(?: rad(?:ius)?)?|cent(?:re|er) rad(?:ius)?|(?:bend )?rad(?:ius)?)"
        r"(?: (?:measured )?(?:to|at) the cent(?:re|er) ?line)?(?P<inside> (?:measured )?(?:to the |on the )?inside"
        r"(?: of (?:the |this )?(?:tube|bend|pipe))?)?",
        _inch,
        "radius {}",
    ),
    Shaped(
        r"(?:clr|(?:cent(?:re|er)[ -]?line |cent(?:re|er) |bend )?radius)(?: (?:of|on|to) (?:the |my |this |that "
        r"|our )?"
        rf"(?:die|former|shoe|bender))?(?P<is> of| is| was| at)? (?P<n>{NUMBER})(?:(?P<in>{IN})| ?(?P<mm>mm))?"
        rf"(?P<inside> (?:measured )?(?:(?:to|on) )?(?:the )?inside(?: of (?:the |this )?(?:tube|bend|pipe))?)?"
        rf"(?! ?{DEGREES})(?! (?:x|by) )(?! [0-9]+/[0-9])"
        r"(?!(?: ?(?:in|inch|mm|\"))? 0?\.[0-9]{2,3}(?: |$))",
        _no_angle,
        "radius {}",
    ),
    Shaped(  # before a wall it is rather the tube: tightest clr 1.5 .120
        rf"(?:clr|(?:cent(?:re|er)[ -]?line |cent(?:re|er) |bend )?radius)(?P<is>) (?P<n>{NUMBER})"
        rf"(?:(?P<in>{IN})| ?(?P<mm>mm))?(?P<inside>)(?= 0?\.[0-9]{{2,3}}(?: |$))",
        _no_angle,
        "radius {}",
        doubt=4,
    ),
    Shaped(
        rf"(?:on |to |at )?(?:an? )?(?P<n>{NUMBER})(?:(?P<in>{IN})| ?(?P<mm>mm))?"
        r" (?:(?:measured )?(?:to|at) the cent(?:re|er)(?: ?line)?|cent(?:re|er) ?line die)",
        _inch,
        "radius {}",
        cue=("cent",),
    ),
    Shaped(
        rf"(?:die|former|shoe)(?: (?:is|was|says|reads))?(?: (?:stamped|marked))?(?: (?:with|as|an?))* (?P<n>{NUMBER})"
        rf"(?:(?P<in>{IN})| ?(?P<mm>mm))?(?: radius| clr)?(?= |$)(?! ?(?:deg|x |by |od|wall))",
        _inch,
        "radius {}",
        cue=("stamped", "marked", "die says", "die reads", "former says"),
    ),
    Shaped(
        r"r(?P<n>[0-9]+(?:\.[0-9]+)?)(?:(?P<in>" + IN + r")| ?(?P<mm>mm))?",
        _inch,
        "radius {}",
        cue=tuple(f"r{n}" for n in range(10)),
    ),
    Shaped(
        rf"(?:at |on |of |to )?(?P<n>{NUMBER}) ?(?:d|(?:x|times)(?: the| its| tube)* (?:diameter|od|d)|diameters)"
        r"(?: (?:radius|clr|bend))*",
        lambda m: f"{m['n']} D",
        "radius {}",
        cue=("times", "0d", "1d", "2d", "3d", "4d", "5d", "6d", "5 d", "3 d", "2 d", "4 d", "6 d", "x d", "x od"),
    ),
)


def in_diameters(values: dict[str, str]) -> dict[str, str]:
    """The values with a radius that was said in diameters as a length; InputError where no diameter was said."""
    radius = values.get("radius", "")
    if not radius.endswith(" D"):
        return values
    if "od" not in values:
        do = "say the outside diameter of the tube, or the radius as a length"
        raise InputError(f"radius {radius}", "radius", "it is told by the diameter, and that was not said", (), do)
    number, _, unit = values["od"].rpartition(" ")
    made = units.parse_number(number) * units.parse_number(radius.removesuffix(" D"))
    return {**values, "radius": f"{float(made):g} {unit}"}


def wall_between(match: re.Match[str]) -> str | None:
    """The wall between an outside and an inside diameter: 1.750 and 1.510 are .12 in; None for none."""
    outer, inner = (float(units.parse_number(match[key])) for key in ("od", "id"))
    unit = "mm" if match["mm"] or outer > _MOST_INCHES else "in"
    return f"{round((outer - inner) / 2, 6):g} {unit}" if 0 < inner < outer else None


class WallBetween(Shaped):
    """The wall between two diameters, told with both."""

    __slots__ = ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """As it is read, and told with what was typed."""
        for hit in super().take(words, at, data):
            typed = [word for word in words[at : at + hit.count] if word[0].isdigit() or word[0] == "."]
            yield Hit(hit.count, hit.value, f"{hit.value} thick, half of {' less '.join(typed)}")
