"""What is asked about a flare and its nut, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import Named, Shaped, Topic, always, words_of
from gaugeblock.errors import Ambiguous, LookupMiss

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open, Reader
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata


def _flare() -> Callable[..., Sheet]:
    from gaugeblock.tubes.flare import flare

    return flare


# A brake line is flared double, or in a bubble: a single flare may crack.
_OF_BRAKES = ("45 deg double", "bubble (ISO)")


def _settle_flare(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """Which line it is says which flares are meant, and that the nut of a double one is that of an inverted flare."""
    settled = {k: v for k, v in values.items() if k not in ("line", "metal")}
    if "line" in values and values.get("flare") == _OF_BRAKES[0]:
        is_metric = values.get("od", "").endswith(" mm")
        settled.setdefault("standard", "metric brake nut" if is_metric else "inverted flare")
    return settled


def _open_flare(values: dict[str, str], data: Refdata) -> Open | None:
    """The kinds of flare of a tube of this size."""
    if "flare" in values:
        return None
    found = []
    kinds = data.table("tubes/flares").column("flare").values()
    for kind in _OF_BRAKES if "line" in values else kinds:
        try:
            _flare()(**_settle_flare({**values, "flare": kind}, data), data=data)
        except (LookupMiss, Ambiguous):
            continue
        found.append({"flare": kind})
    return ("flare",), found


_FLARES = (Named(words_of("tubes", "flare", "tubes/flares"), tail="flares?|flared|fittings?"),)


def _port(match: re.Match[str]) -> str:
    """A thread as it is written: M10x1, 3/8-24."""
    typed = match["t"]
    if typed and typed[0] != "m":
        return typed
    if not typed and match["s"]:
        return f"{match['s']}-{match['n']}"
    size, pitch = typed[1:].split("x") if typed else (match["d"], match["p"])
    return f"M{float(size):g}x{float(pitch):g}"


_APART = r"(?: (?:with|by|and|at|x|has|measures?|nut|an?|the))*"
_WRITTEN = r"(?P<t>[0-9/]+-[0-9]{2}|m ?[0-9]+ ?x ?[0-9]+(?:\.[0-9]+)?)(?P<s>)(?P<n>)(?P<d>)(?P<p>)"
_MEASURED = (
    rf"(?P<t>)(?:(?P<s>[0-9]+/[0-9]+)(?: ?(?:in|inch|\"))?{_APART} (?P<n>[0-9]{{2}}) ?(?:tpi|threads?(?: (?:per"
    rf"|to the|an)"
    rf" inch)?)|(?P<d>[0-9]{{1,2}}) ?mm{_APART} (?P<p>[0-9]+(?:\.[0-9]+)?) ?(?:mm )?(?:pitch|threads?))"
)


def _open_port(values: dict[str, str], data: Refdata) -> Open | None:
    """The flares and tubes whose nut has the thread that was said."""
    rows = data.table("tubes/flares").rows
    nuts = [r for r in rows if "nut_thread" in r["quantity"] and not r.standing and r["od"][:1].isdigit()]
    found: dict[tuple[str, str], dict[str, str]] = {}
    for kind, od, standard in dict.fromkeys((r["flare"], r["od"], r["standard"]) for r in nuts):
        size = od.partition(" to ")[0] + (" mm" if " to " in od else "")
        if values.get("flare", kind) != kind or (kind, size) in found:
            continue
        if values["port"] in _threads(_flare()(kind, od=size, standard=standard, data=data)):
            alone = len(_threads(_flare()(kind, od=size, data=data))) == 1
            found[kind, size] = {"flare": kind, "od": size} | ({} if alone else {"standard": standard})
    return ("flare", "od"), list(found.values())


def _threads(sheet: Sheet) -> list[str]:
    """The threads of the nuts of a flare, as its title has them."""
    return sheet.title.partition(": nut ")[2].partition(", port")[0].split(" or ")


def _settle_port(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """The tube is what is asked: the wall of it comes first, and the nut is checked against the port."""
    return {key: value for key, value in values.items() if key != "line"}


_A_FLARE = r"(?:an? |the )?(?:(?:45 ?(?:deg(?:ree)?s? )?)?(?:double|single)|bubble|iso|din|inverted|sae)"
# Which of two it is.
_ONE_OF_TWO = rf"{_A_FLARE}(?: flares?)? or (?:(?:does|is) it (?:have to be|be|an?) )?{_A_FLARE}(?: flares?)?"
PORT = Topic(
    _flare,
    "tube of a thread",
    {
        "flare": _FLARES,
        "port": (
            Shaped(_WRITTEN, _port, "{}", cue=("-", "x")),
            Shaped(_MEASURED, _port, "{}", cue=("pitch", "thread", "tpi")),
        ),
        "line": (Shaped(r"brakes?(?: (?:lines?|pipes?|tubes?|tubing))?", always("brake line"), "of a brake line"),),
    },
    rf"{_ONE_OF_TWO}|"
    r"(?:what|which)(?: size)?(?: of)? (?:tubes?|pipes?|lines?)|tubes?|pipes?|lines?|size|fits?|takes?|outlets?"
    r"|cylinders?"
    r"|measures?|end|nuts?|ports?|threads?|unions?|flares?|tools?|buy|flaring|for|goes|brakes?|one|metric|fittings?",
    needs=("port",),
    opens=_open_port,
    settle=_settle_port,
    asks_for=r"tube size|size of (?:the )?(?:tube|pipe|line)|(?:what|which)\b.*\b(?:tubes?|pipes?|lines?|flare"
    r"|flaring)|(?:tubes?|pipes?|lines?"
    r"|flare)\b.*\b(?:what|which)"
    rf"|{_ONE_OF_TWO}",
    is_named=True,
    unmoved="finish state service quality",
)
ANGLE = Topic(
    _flare,
    "angle of a flare",
    {
        "flare": _FLARES,
        "fact": (
            Shaped(
                r"(?:(?:what|which) )?(?:seat |flare |cone )?angles?|(?:how many|what|which) deg(?:rees?)?",
                always("angle"),
                "its angle",
                cue=("angle", "deg"),
            ),
            *(
                Shaped(
                    rf"{n} ?deg(?:rees?)?",
                    always("angle"),
                    f"its angle, and whether it is {n} degrees",
                    doubt=2,
                    cue=(str(n),),
                )
                for n in (37, 45)
            ),
        ),
    },
    r"flares?|flared|fittings?|seats?|(?:the|its|of) cones?|nuts?|is|are|what|a|an|have|has|of",
    needs=("flare", "fact"),
    asks_for=r"flares?|flared|fittings?|seats?|cones?",
    is_named=True,
    unmoved="finish state service quality",
)


_SIGNALS = (
    r"(?:flare )?angles?|flares?|flared|metric|fittings?|nuts?|(?:nut"
    r" )?threads?(?: size)?|what threads?|(?:fuel )?hard ?lines?"
    r"|hard(?= (?:fuel|brake) (?:line|pipe|tube))|lines?|fuel"
    r" (?:lines?|pipes?|tubes?)(?:"
    r" nuts?)?|tubes?|size|fits?|match(?:es)?|suits?|goes (?:on|to|with)|ports?"
    r"|for flaring|(?:to )?flare it|max(?:imum)? wall|wall(?: max(?:imum)?| limit)?|max(?:imum)?"
)


_OF_PORT = (
    Shaped(
        r"(?:port|thread|threads?) (?P<t>[0-9/]+-[0-9]{2}|m[0-9]+x[0-9]+(?:\.[0-9]+)?)",
        _port,
        "port {}",
    ),
    Shaped(
        r"(?P<t>[0-9/]+-[0-9]{2}|m[0-9]+x[0-9]+(?:\.[0-9]+)?)(?: (?:port|threads?))?",
        _port,
        "port {}",
        doubt=1,
    ),
)


def topic(od: tuple[Reader, ...], walls: tuple[Reader, ...]) -> Topic:
    """The topic of a flare, with the words of a tube's diameter and its wall."""
    return Topic(
        _flare,
        "flare",
        {
            "flare": _FLARES,
            "od": (
                Shaped(  # no line is of so many inches
                    r"(?P<n>4\.7[0-9]*|[5-9]\.[0-9]+|1[0-9]\.[0-9]+)(?! ?(?:in|inch|mm|\")(?: |$))(?: (?:od"
                    r"|line|pipe|tube))?",
                    lambda m: f"{m['n']} mm",
                    "{} OD",
                    cue=tuple(f"{n}." for n in range(10)),
                ),
                *od,
            ),
            "wall": walls,
            "standard": (
                Named(words_of("tubes", "standard", "tubes/flares")),
                Shaped(
                    r"(?:american|us|usa)(?: (?:cars?|trucks?|made|type|style))?",
                    always("inverted flare"),
                    "inverted flare",
                    doubt=1,
                    cue=("americ", "us"),
                ),
            ),
            "fact": (
                Shaped(
                    r"(?:what |which )?(?:nut |fitting )?(?:threads?(?: (?:size|pitch))?)(?: (?:of|on|is|for))*(?:"
                    r" nuts?)?",
                    always("thread"),
                    "its thread",
                ),
                Shaped(r"(?:what|which) (?:tube |line )?nut(?: (?:size|thread))?", always("thread"), "its thread"),
            ),
            "line": (Shaped(r"brakes?(?: (?:lines?|pipes?|tubes?|tubing))?", always("brake line"), "of a brake line"),),
            "metal": (  # whose flare and nut are those of steel; stainless is another thing
                Shaped(
                    r"(?:copper[- ]nickel|cupro[- ]?nickel|[ck]unifer|plain steel)(?: (?:tub(?:e|ing)|pipe|line))?",
                    lambda m: m[0],
                    "of {}",
                    cue=("copper", "cupro", "unifer", "plain"),
                ),
            ),
            "port": _OF_PORT,
        },
        _SIGNALS,
        needs=("od",),
        asks_for=r"flares?(?! nuts?)|flared|threads?|ports?|orb|bubble|(?:what|which) (?:tube |line )?nut",
        opens=_open_flare,
        settle=_settle_flare,
        columns={name: ("tubes/flares", name) for name in ("flare", "od", "standard")},
        unmoved="finish state service quality",
    )
