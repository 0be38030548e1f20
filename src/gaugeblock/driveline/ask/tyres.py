"""What is asked of the size of a tyre, as people say it: by its code, or by its width and its rim alone."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic, always
from gaugeblock.driveline.ask.common import answer_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re

    from gaugeblock.answer.asking import Open
    from gaugeblock.tables.load import Refdata


def _size(match: re.Match[str]) -> str:
    return match["over"].replace(" ", "").upper() if match["over"] else code_of(match["code"])


def code_of(said: str) -> str:
    """A tyre's code as it is printed on it: ``225 70 15`` is 225/70R15."""
    from re import findall

    width, aspect, rim = findall(r"[0-9]+(?:\.5)?", said)
    return f"{width}/{aspect}R{rim}"


TYRE = Topic(
    lambda: answer_of("gears.size", "tyre"),
    "tyre",
    {
        "size": (
            Shaped(
                r"(?P<code>(?:p|lt)?[1-3][0-9]5 ?[/ -] ?[2-9][05](?: ?(?:z?r|-|/) ?|"
                r" )[12][0-9](?:\.5)?)(?: ?(?:c|lt|xl)|'?s)?"
                r"|(?P<over>[2-4][0-9](?:\.[0-9]+)? ?x ?[0-9]{1,2}(?:\.[0-9]+)? ?(?:r|-) ?[0-9]{2})",
                _size,
            ),
        ),
        "fact": (
            Shaped(r"(?:revs?|revolutions|turns)(?: (?:per|a|in a) mile)?", always("revolutions")),
            Shaped(r"(?:section )?width|how wide", always("width")),
            Shaped(
                r"(?:rolling |outside )?(?:circ?u?m?f[a-z]*|roll ?out|rollout)|way round|distance (?:round|around)"
                r"|how far (?:round|around)",
                always("circumference"),
            ),
            Shaped(
                r"(?:outside |overall |rolling )?(?:dia(?:meter)?|height)|how (?:tall|high|big)|od|tall(?:er"
                r"|est)?|biggest"
                r"|higher|highest",
                always("diameter"),
            ),
        ),
    },
    r"tires?|tyres?|rubber|sizes?|inches|wheels?|metric(?: (?:equivalent|size))?|equivalent|equals?"
    r"|near(?:ly)?(?: enough)?"
    r"|stands?(?: any)?|any|same|(?:when |brand )new|unloaded|off the car"
    r"|not (?:squashed|loaded|squat|flattened)(?: by (?:the|its|any) (?:load|weight))?|(?:with )?(?:no|without) load",
    needs=("size",),
    unmoved="metal finish form standard service quality",
)
# Profiles that are set side by side where none was said.
_PROFILES = ("45", "50", "55", "60", "65", "70", "75", "80")
_WIDTH = r"(?:p|lt)?(?P<width>[1-3][0-9]5)(?: ?mm)?(?: (?:wide|section|width|radials?|tyres?|tires?|rubber))*"
_RIM = r"(?P<rim>1[2-9]|2[0-4])(?:[ -]?(?:inch(?:es)?|in|\"))?(?: (?:rims?|wheels?))?"


def _width_and_rim(match: re.Match[str]) -> str:
    return f"{match['width']} on {match['rim']}"


def _open_profile(values: dict[str, str], _data: Refdata) -> Open | None:
    """The usual profiles, where none was said: the height is a share of the width."""
    return None if "profile" in values else (("profile",), [{"profile": profile} for profile in _PROFILES])


def _with_profile(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """The code of a tyre whose width, rim and profile were said apart."""
    width, _, rim = values["short"].partition(" on ")
    own = {k: v for k, v in values.items() if k not in ("short", "profile")}
    return {**own, "size": f"{width}/{values['profile']}R{rim}"}


SHORT_TYRE = Topic(
    TYRE.answer,
    "tyre",
    {
        "short": (
            Shaped(
                rf"{_WIDTH}(?: (?:on|for|to fit)(?: an?| the| my)* | ?[rx/-] ?| ){_RIM}",
                _width_and_rim,
                "{} inch",
            ),
            Shaped(
                rf"{_RIM}(?: (?:with|and|for|takes|has))?(?: an?| the| my)* {_WIDTH}",
                _width_and_rim,
                "{} inch",
            ),
        ),
        "profile": (
            Shaped(r"(?P<n>[2-9][05])(?: (?:profile|series))", lambda m: m["n"], "{} profile"),
            Shaped(r"(?:profile|series)(?: (?:of|is))? (?P<n>[2-9][05])", lambda m: m["n"], "{} profile"),
        ),
        "fact": TYRE.slots["fact"],
    },
    TYRE.signals,
    needs=("short",),
    opens=_open_profile,
    settle=_with_profile,
    asks_for=r"tyres?|tires?|rubber|how (?:tall|high|big|wide)|circumference|rolling|rollout|radials?"
    r"|[1-3][0-9]5 ?r ?1[2-9]",
    is_named=True,
    unmoved="metal finish form standard service quality",
)
_WIDER = (-10, 0, 10)  # mm
_AS_HIGH = 0.03


def _open_rim(values: dict[str, str], _data: Refdata) -> Open | None:
    """The tyre that was said, and those for the other rim that stand about as high, the nearest first."""
    import re

    numbers = [float(number) for number in re.findall(r"[0-9]+(?:\.[0-9]+)?", values["like"])]
    if "X" in values["like"]:  # 31x10.50R15, in inches
        width, high = 10.0 * round((numbers[1] * 25.4 - 5) / 10) + 5, numbers[0] * 25.4
    else:
        width, high = numbers[0], 2 * numbers[0] * numbers[1] / 100 + numbers[2] * 25.4
    other = float(values["rim"])
    found = {
        f"{wide:g}/{profile}R{values['rim']}": abs(2 * wide * profile / 100 + other * 25.4 - high) / high
        for more in _WIDER
        for wide in [width + more]
        for profile in range(30, 90, 5)
    }
    near = sorted((size for size in found if found[size] <= _AS_HIGH), key=lambda size: found[size])
    return ("size",), [{"size": size} for size in (values["like"], *near)]


def _of_size(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    return {key: value for key, value in values.items() if key in ("size", "fact")}


# Which tyre for another rim stands about as high as one that was said.
TYRE_AS_HIGH = Topic(
    TYRE.answer,
    "tyres that stand about as high",
    {
        "like": (TYRE.slots["size"][0],),
        "rim": (
            Shaped(
                r"(?:(?:what|which) )?(?:an? |on )?(?P<n>1[2-9]|2[0-4])[ -]?(?:inch|in|\")(?: (?:rims?|wheels?"
                r"|sizes?|tyres?"
                r"|tires?|version|equivalent|one))*",
                lambda m: m["n"],
                "on {} inch rims",
            ),
            Shaped(
                r"(?:what|which) (?P<n>1[2-9]|2[0-4])(?= (?:is|comes|would|size|tyre|tire|matches|stands))",
                lambda m: m["n"],
                "on {} inch rims",
            ),
        ),
    },
    TYRE.signals
    + r"|which|what|closest|nearest|close|comes?|(?:in |the )?(?:same )?(?:height|diameter)|to|as|tall|high|replaces?"
    r"|going|go|swap|up(?:size)?|down|rims?|keeps?|match(?:es)?|from|need",
    needs=("like", "rim"),
    opens=_open_rim,
    settle=_of_size,
    asks_for=r"closest|nearest|same (?:height|diameter|size|overall)|match(?:es)?|as (?:tall|high)|equals?"
    r"|replaces?|equivalent",
    is_named=True,
    unmoved="metal finish form state standard service quality",
)
# A tyre of which only the height was said.
TYRE_BY_HEIGHT = Topic(
    TYRE.answer,
    "tyre",
    {
        "size": (
            Shaped(
                r"(?P<n>[2-4][0-9](?:\.[0-9]+)?) ?(?:inch(?:es)?|in|\")(?: (?:tall|high|diameter))?(?: (?:tyres?"
                r"|tires?|wheels?))?"
                r"|(?:tyres?|tires?|wheels?)(?: (?:of|is|are|that|stands?))* (?P<m>[2-4][0-9](?:\.[0-9]+)?)"
                r"(?: ?(?:inch(?:es)?|in|\"))?(?: (?:tall|high))?",
                lambda m: f"{m['n'] or m['m']} in",
                "{}",
                cue=("tyre", "tire", "wheel"),
            ),
            Shaped(
                r"(?P<n>[4-9][0-9]{2}|1[0-2][0-9]{2}) ?mm(?: (?:tall|high|diameter))?(?: (?:tyres?|tires?|wheels?))?",
                lambda m: f"{m['n']} mm",
                "{}",
                cue=("tyre", "tire", "wheel"),
            ),
        ),
        "fact": (TYRE.slots["fact"][0], TYRE.slots["fact"][2]),
    },
    TYRE.signals + r"|how many|does|do|an?|in|per|mile",
    needs=("size", "fact"),
    asks_for=r"(?:per|a|in a|the) mile|circ?u?m?f[a-z]*|roll ?out|way round|how far (?:round|around)",
    is_named=True,
    unmoved="metal finish form state standard service quality",
)
